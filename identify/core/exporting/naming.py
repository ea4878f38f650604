"""What records are about, in the words of the ranges that are at hand."""

from collections.abc import Sequence

from ..holdings import shelfmark
from ..importing.brought_before import text_at
from ..importing.text_parts import joined_by
from ..native.values import sort_of_value, value_at
from ..types.exporting import Naming
from ..types.importing import Fields
from ..types.pack import Pack


def naming_of(packs: Sequence[Pack]) -> Naming:
    """The names in some ranges."""
    out: Naming = {"ranges": {}, "items": {}, "variants": {}}
    for pack in packs:
        out["ranges"][shelfmark("", pack["id"])] = pack["range"]["name"]
        for item in pack["items"]:
            out["items"][shelfmark(pack["id"], item["number"])] = item["name"]
        for variant in pack["variants"]:
            out["variants"][shelfmark(pack["id"], variant["id"])] = variant["name"]
    return out


def meant_by(record: Fields) -> list[Fields]:
    """What a record may be, as far as that can be read."""
    out: list[Fields] = []
    of = value_at(record, "of")
    if sort_of_value(of) == "list":
        for candidate in of:
            if sort_of_value(candidate) == "group":
                out.append(candidate)
    return out


def item_in_words(naming: Naming, record: Fields) -> str:
    """The name of the item that a record is about, "" where no range at hand has it."""
    number = text_at(record, "item")
    for candidate in meant_by(record):
        if number == "":
            number = text_at(candidate, "item")
    return naming["items"].get(shelfmark(text_at(record, "pack"), number), "")


def variant_in_words(naming: Naming, record: Fields) -> str:
    """The names of the variants that a record may be of, "" where no range at hand has them."""
    ids = [text_at(candidate, "variant") for candidate in meant_by(record)]
    if len(ids) == 0:
        ids.append(text_at(record, "variant"))
    pack = text_at(record, "pack")
    names = [naming["variants"].get(shelfmark(pack, ident), "") for ident in ids]
    return joined_by([name for name in names if name != ""], " or ")
