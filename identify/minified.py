"""Scripts, styles and pages as they go to the phone: without comments, spaces and long names."""

from functools import cache

try:
    import minify
except ImportError:  # there is no wheel of it for every machine; all works without, and is larger
    minify = None

KINDS = {"js": "application/javascript", "css": "text/css", "html": "text/html"}


class UnreadableError(Exception):
    """A file that is not what its name says."""


@cache
def minified(name: str, text: str) -> str:
    """The text of a file, smaller, by the ending of its name. Raises UnreadableError."""
    kind = KINDS.get(name.rpartition(".")[2])
    if kind is None or minify is None:
        return text
    try:
        return str(minify.string(kind, text))
    except minify.MinifyError as error:
        raise UnreadableError(f"{name} cannot be read: {error}") from error
