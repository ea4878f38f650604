"""Scripts, styles and pages as they go to the phone: smaller, and the same to whoever reads them.

What is compiled, styles and pages go through a minifier with a parser, where there is a wheel of
it. Not what is written by hand: of several `const` one after another that minifier puts those with
a pattern first, before what they use; compiled scripts have no patterns.
"""

import re
from functools import cache

try:
    import minify
except ImportError:  # there is no wheel of it for every machine; all works without, and is larger
    minify = None

KINDS = {"js": "application/javascript", "css": "text/css", "html": "text/html"}
COMMENT = re.compile(
    r"^[ \t]*/\*(?:(?!\*/).)*\*/[ \t]*\n|^[ \t]*//[^\n]*\n", re.MULTILINE | re.DOTALL
)
INDENT = re.compile(r"^[ \t\n]+", re.MULTILINE)


@cache
def minified(name: str, text: str) -> str:
    """A compiled script, a style or a page, smaller, by the ending of its name."""
    kind = KINDS.get(name.rpartition(".")[2])
    return text if minify is None or kind is None else str(minify.string(kind, text))


def uncommented(script: str) -> str:
    """A script without comments on lines of their own, indents and empty lines.

    So the text of a template that goes over several lines has no indent.
    """
    return INDENT.sub("", COMMENT.sub("", script))
