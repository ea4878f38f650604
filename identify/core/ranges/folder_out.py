"""The rows of a range as the files of a folder, one line a row or a field, so that a change of one
shows as one in whatever compares the files.
"""

from ..native.values import is_true, json_text
from ..types.rows import CellText, DrawingRow, FeatureRow, RangeRows, TextPair
from .folder_in import (
    CHANGE_COLUMNS,
    ITEM_COLUMNS,
    MOVE_COLUMNS,
    SOURCE_COLUMNS,
    VARIANT_COLUMNS,
)

QUOTE = '"'


def toml_line(name: str, text: str) -> str:
    """A text under a name; JSON's way to write it is TOML's too."""
    return name + " = " + json_text(text) + "\n"


def toml_where(name: str, text: str) -> str:
    """The same, left out where nothing is said."""
    return toml_line(name, text) if text != "" else ""


def toml_number(name: str, number: float) -> str:
    """A number under a name."""
    return name + " = " + json_text(number) + "\n"


def toml_list(name: str, values: list[str]) -> str:
    """A list of texts under a name."""
    return name + " = " + json_text(values) + "\n"


def range_text(rows: RangeRows) -> str:
    """range.toml"""
    about = rows["range"]
    out = toml_line("name", about["name"]) + toml_where("maker", about["maker"])
    if about["gauge_mm"] > 0:
        out = out + toml_number("gauge_mm", about["gauge_mm"])
    out = out + toml_where("material", about["material"]) + toml_where("scale", about["scale"])
    out = out + toml_where("country", about["country"]) + toml_where("years", about["years"])
    out = out + toml_where("about", about["about"])
    out = out + toml_where("by", about.get("by", ""))
    if is_true(about["invented"]):
        out = out + "invented = true\n"
    for kind in rows["kinds"]:
        out = out + "\n[[kinds]]\n" + toml_line("id", kind["id"]) + toml_line("name", kind["name"])
        out = out + toml_line("plural", kind["plural"]) + toml_where("caption", kind["caption"])
        out = out + toml_where("complete", kind["complete"])
    for part in rows["parts"]:
        out = out + "\n[[parts]]\n" + toml_line("id", part["id"]) + toml_line("name", part["name"])
        out = out + toml_number("swap", part["swap"]) + toml_where("replaced", part["replaced"])
        out = out + toml_where("altered", part["altered"])
    for caution in rows["cautions"]:
        out = out + "\n[[cautions]]\n"
        if len(caution["kinds"]) > 0:
            out = out + toml_list("kinds", caution["kinds"])
        out = out + toml_line("text", caution["text"])
    return out


def feature_text(feature: FeatureRow) -> str:
    """One [[feature]]."""
    out = "[[feature]]\n" + toml_line("id", feature["id"]) + toml_line("name", feature["name"])
    out = out + toml_where("title", feature["title"])
    out = out + toml_line("question", feature["question"])
    out = out + toml_line("where", feature["where"]) + toml_where("part", feature["part"])
    out = out + toml_number("seconds", feature["seconds"]) + toml_line("needs", feature["needs"])
    if not is_true(feature["every"]):
        out = out + toml_list("kinds", feature["kinds"])
    if len(feature["when"]) > 0:
        inside = ""
        for condition in feature["when"]:
            inside = inside + (", " if inside != "" else "")
            inside = inside + condition[0] + " = " + json_text(condition[1])
        out = out + "when = { " + inside + " }\n"
    if len(feature["mistaken"]) > 0:
        out = out + "mistaken = " + json_text(feature["mistaken"]) + "\n"
    out = out + toml_where("layer", feature["layer"]) + toml_where("unseen", feature["unseen"])
    out = out + "states = [\n"
    for state in feature["states"]:
        inside = "id = " + json_text(state["id"]) + ", name = " + json_text(state["name"])
        if state["caption"] != "":
            inside = inside + ", caption = " + json_text(state["caption"])
        if state["look"] != "":
            inside = inside + ", look = " + json_text(state["look"])
        out = out + "  { " + inside + " },\n"
    return out + "]\n"


def csv_cell(text: str) -> str:
    """A cell, in quotation marks where it must be."""
    quoted = ""
    needs = False
    for n in range(len(text)):
        c = text[n : n + 1]
        needs = needs or c in [",", QUOTE, "\n", "\r"]
        quoted = quoted + (QUOTE + QUOTE if c == QUOTE else c)
    return QUOTE + quoted + QUOTE if needs else text


def csv_row(cells: list[str]) -> str:
    """A row."""
    out = ""
    for n in range(len(cells)):
        out = out + ("," if n > 0 else "") + csv_cell(cells[n])
    return out + "\n"


def listed_cell(texts: list[str]) -> str:
    """Several texts in one cell; a mark that parts them cannot stand in one."""
    out = ""
    for text in texts:
        cell = ""
        for n in range(len(text)):
            c = text[n : n + 1]
            cell = cell + ("," if c == ";" else c)
        out = out + ("; " if out != "" else "") + cell
    return out


def pairs_cell(pairs: list[TextPair]) -> str:
    """What other sources say; those that say no year say nothing."""
    return listed_cell([pair[0] + " " + pair[1] for pair in pairs if pair[1] != ""])


def both(first: list[str], second: list[str]) -> list[str]:
    """Two lists, one behind the other."""
    out: list[str] = []
    for text in first:
        out.append(text)
    for text in second:
        out.append(text)
    return out


def features_said(rows: RangeRows, cells: list[list[CellText]]) -> list[str]:
    """The features of which anything is said, in their order."""
    said: dict[str, int] = {}
    for row in cells:
        for cell in row:
            said["i" + cell[0]] = 1
    return [feature["id"] for feature in rows["features"] if "i" + feature["id"] in said]


def seen_columns(features: list[str], cells: list[CellText]) -> list[str]:
    """What is seen, a cell a feature."""
    out: list[str] = []
    for feature in features:
        text = ""
        for cell in cells:
            if cell[0] == feature:
                text = cell[1]
        out.append(text)
    return out


def items_text(rows: RangeRows) -> str:
    """items.csv"""
    features = features_said(rows, [row["cells"] for row in rows["items"]])
    out = csv_row(both(ITEM_COLUMNS, features))
    for item in rows["items"]:
        fixed = [
            item["number"], item["name"], item["kind"], item["years"], item["source"],
            pairs_cell(item["other_years"]), item["formation"], listed_cell(item["contains"]),
            listed_cell(item["carried"]), item["note"],
        ]  # fmt: skip
        out = out + csv_row(both(fixed, seen_columns(features, item["cells"])))
    return out


def variants_text(rows: RangeRows) -> str:
    """variants.csv"""
    features = features_said(rows, [row["cells"] for row in rows["variants"]])
    out = csv_row(both(VARIANT_COLUMNS, features))
    for variant in rows["variants"]:
        fixed = [
            variant["id"], variant["item"], variant["name"], variant["years"], variant["source"],
            pairs_cell(variant["other_years"]), json_text(variant["common"]), variant["note"],
        ]  # fmt: skip
        out = out + csv_row(both(fixed, seen_columns(features, variant["cells"])))
    return out


def changes_text(rows: RangeRows) -> str:
    """changes.csv"""
    out = csv_row(CHANGE_COLUMNS)
    for change in rows["changes"]:
        out = out + csv_row(
            [
                change["feature"], change["state"], change["since"], change["until"],
                listed_cell(change["kinds"]), listed_cell(change["items"]), change["source"],
                pairs_cell(change["other_from"]), change["note"],
            ]
        )  # fmt: skip
    return out


def sources_text(rows: RangeRows) -> str:
    """sources.csv"""
    out = csv_row(SOURCE_COLUMNS)
    for source in rows["sources"]:
        trust = json_text(source["trust"])
        out = out + csv_row([source["id"], source["what"], source["year"], trust])
    return out


def moves_text(rows: RangeRows) -> str:
    """moves.csv"""
    out = csv_row(MOVE_COLUMNS)
    for move in rows["moves"]:
        out = out + csv_row([move["what"], move["was"], move["now"], move["note"]])
    return out


def files_of_rows(rows: RangeRows) -> list[DrawingRow]:
    """The files of a folder but for its drawings: their names and texts."""
    features = ""
    for feature in rows["features"]:
        features = features + ("\n" if features != "" else "") + feature_text(feature)
    out: list[DrawingRow] = [
        {"id": "range.toml", "text": range_text(rows)},
        {"id": "features.toml", "text": features},
        {"id": "items.csv", "text": items_text(rows)},
        {"id": "variants.csv", "text": variants_text(rows)},
        {"id": "changes.csv", "text": changes_text(rows)},
        {"id": "sources.csv", "text": sources_text(rows)},
    ]
    if len(rows["moves"]) > 0:
        out.append({"id": "moves.csv", "text": moves_text(rows)})
    return out
