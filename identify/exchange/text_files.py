"""Tables in text files: Python decodes, the core says in which encoding and reads the rest."""

from identify.core.importing.encodings import encoding_of, text_of_file
from identify.core.importing.text_table import (
    begun_table,
    no_text_in,
    parse_on,
    parsed_whole,
    table_parsed,
)
from identify.core.types.importing import FileTable
from identify.core.types.tables import FileText
from identify.exchange.table import FileError

AT_ONCE = 1000  # rows
ABOVE = "".join(map(chr, range(128, 256)))


def text_in(data: bytes) -> FileText:
    """The text of a file, and what to say about its encoding."""
    raw = data.decode("latin-1")
    encoding, name = encoding_of(raw)
    return text_of_file(raw, data.decode(encoding, "replace"), name, ABOVE)


def read_text(data: bytes) -> FileTable:
    """The table in a text file. Raises FileError."""
    read = text_in(data)
    wrong = no_text_in(read["text"])
    if wrong:
        raise FileError(wrong)
    parsing = begun_table(read["text"])
    while not parsed_whole(parsing):
        parse_on(parsing, AT_ONCE)
    table = table_parsed(parsing)
    table["notes"] = [*read["notes"], *table["notes"]]
    return table
