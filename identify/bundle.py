"""The screens as one script: what is in many small files to work on goes to the phone as one.

Each module of web/ becomes a function that is called once and gives what the module exports, in
the order in which they need one another. Only the plain forms that web/ uses are known: named
imports from relative paths at the top, `export` before a function, class or const. Anything else
is refused.
"""

import posixpath
import re
from collections.abc import Mapping

IMPORT = re.compile(r'^import \{([^}]*)\} from "(\.[^"]+)";\n', re.MULTILINE)
EXPORT = re.compile(r"^export ((?:async )?function|class|const) (\w+)", re.MULTILINE)
LATER = re.compile(r'\bimport\("(\.[^"]+)"\)')
COMMENT = re.compile(
    r"^[ \t]*/\*(?:(?!\*/).)*\*/[ \t]*\n|^[ \t]*//[^\n]*\n", re.MULTILINE | re.DOTALL
)
INDENT = re.compile(r"^[ \t\n]+", re.MULTILINE)
LEFT = re.compile(r"^(?:import|export)\b.*", re.MULTILINE)


class BundleError(Exception):
    """A module that cannot be put with the others."""


class _Bundle:
    """Modules in the order in which they need one another, each written once."""

    def __init__(self, sources: Mapping[str, str]) -> None:
        self.sources = sources
        self.places: dict[str, int] = {}
        self.open: list[str] = []
        self.written: list[str] = []

    def name_of(self, wanted: str, by: str) -> str:
        """The name that the module `wanted`, as `by` writes it, has here."""
        path = posixpath.normpath(posixpath.join(posixpath.dirname(by), wanted))
        if path not in self.sources:
            raise BundleError(f"{by} imports {wanted}, which is not there.")
        if path in self.open:
            raise BundleError(f"{by} imports {wanted}, which needs {by} itself.")
        if path not in self.places:
            body, exports = self.body_of(path)
            self.places[path] = len(self.places)
            given = ",".join(exports)
            self.written.append(
                f"const m{self.places[path]} = (() => {{\n{body}\nreturn {{{given}}};\n}})();"
            )
        return f"m{self.places[path]}"

    def body_of(self, path: str) -> tuple[str, list[str]]:
        """A module's text without its imports and exports, and the names that it exports."""
        self.open.append(path)
        text = self.sources[path]
        taken = []
        for names, wanted in IMPORT.findall(text):
            listed = " ".join(names.split()).replace(" as ", ": ")
            taken.append(f"const {{{listed}}} = {self.name_of(wanted, path)};\n")
        text = IMPORT.sub("", text)
        exports = [name for _, name in EXPORT.findall(text)]
        text = EXPORT.sub(r"\1 \2", text)
        text = LATER.sub(lambda found: f"Promise.resolve({self.name_of(found[1], path)})", text)
        text = text.replace("import.meta.url", f'new URL("{path}", import.meta.url)')
        left = LEFT.search(text)
        if left:
            raise BundleError(f'{path}: "{left[0]}" is a form that cannot be put together.')
        self.open.pop()
        return "".join(taken) + text, exports


def bundled(sources: Mapping[str, str], start: str) -> str:
    """The module `start` with all that it needs, in one. Raises BundleError."""
    bundle = _Bundle(sources)
    body, _ = bundle.body_of(start)
    return small("\n".join([*bundle.written, body]))


def small(script: str) -> str:
    """The same script without comments on lines of their own, indents and empty lines.

    So the text of a template that goes over several lines has no indent.
    """
    return INDENT.sub("", COMMENT.sub("", script))
