"""Scripts, styles and pages as they go to the phone: smaller, and the same to whoever reads them.

There are two minifiers, each with a parser, for neither does it all: the one for what is written by
hand leaves names as they are; the other shortens them too, but of several `const` one after another
it puts those with a pattern first, before what they use, and compiled scripts have no patterns.
"""

import re
from functools import cache

import minify_html

try:
    import minify
except ImportError:  # there is no wheel of it for every machine; all works without, and is larger
    minify = None

KINDS = {"js": "application/javascript", "css": "text/css", "html": "text/html"}
COMMENT = re.compile(
    r"^[ \t]*/\*(?:(?!\*/).)*\*/[ \t]*\n|^[ \t]*//[^\n]*\n", re.MULTILINE | re.DOTALL
)
INDENT = re.compile(r"^[ \t\n]+", re.MULTILINE)
OPEN, CLOSE = "<script type=module>", "</script>"


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


@cache
def minified_by_hand(script: str) -> str:
    """A script that was written by hand, smaller; as it is where that minifier cannot read it.

    Comments go first: it keeps those that look like documentation.
    """
    page = f"{OPEN}{uncommented(script)}{CLOSE}"
    page = str(minify_html.minify(page, minify_js=True, keep_closing_tags=True))
    return page[len(OPEN) : -len(CLOSE)]
