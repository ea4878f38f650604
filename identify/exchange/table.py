"""A file that cannot be taken as a table, and whether one can."""

from identify.core.importing.text_table import too_large
from identify.core.types.importing import FileTable
from identify.errors import UserError


class FileError(UserError):
    """A file that cannot be taken at all, with what would be right."""


def checked(table: FileTable) -> FileTable:
    """The table if it can be taken. Raises FileError."""
    wrong = table["wrong"] or too_large(table["rows"])
    if wrong:
        raise FileError(wrong)
    return table
