"""The screens as two scripts: what is in many small files to work on goes to the phone as few.

Each module of web/ becomes a function that is called once and gives what the module exports, in
the order in which they need one another; the exported names stand for all modules behind it. Only
the plain forms that web/ uses are known: named imports from relative paths at the top, `export`
before a function, class or const. Anything else is refused.

The first script holds what the start imports, and what that imports. All else is asked for by
`import()` alone and goes into the second, later.js, which the phone loads when something of it is
first wanted. It imports the first one, so nothing at the top of the first may wait for it.
"""

import posixpath
import re
from collections import Counter
from collections.abc import Mapping, Sequence

IMPORT = re.compile(r'^import \{([^}]*)\} from "(\.[^"]+)";\n', re.MULTILINE)
EXPORT = re.compile(r"^export ((?:async )?function|class|const) (\w+)", re.MULTILINE)
WORDS = re.compile(r"(?:^|/)(?:\w+-)*words\.js$")
FIXED = re.compile(
    r'^export const ([A-Z][A-Z0-9_]*) =\s+((?:"(?:[^"\\\n]|\\.)*"(?:\s*\+\s*)?)+);\n', re.MULTILINE
)
OWN = re.compile(r"^(?:import|(?:async )?function|class|const|let)\b", re.MULTILINE)
NAMED = re.compile(r"^const (\w+) =", re.MULTILINE)
HANDED = r"[(,:?=&|>]\s*{}\s*[),;:\]]"
LATER = re.compile(r'\bimport\("(\.[^"]+)"\)')
LEFT = re.compile(r"^(?:import\b(?!\()|export\b).*", re.MULTILINE)
SECOND = "later.js"
SHARED = "shared"  # what app.js exports: all that later.js takes of it, in one list
MODULES = "modules"  # what later.js exports: its modules by their path


class BundleError(Exception):
    """A module that cannot be put with the others."""


class _Bundle:
    """Modules in the order in which they need one another, each written once."""

    def __init__(self, sources: Mapping[str, str]) -> None:
        self.sources = sources
        self.given: dict[str, dict[str, str]] = {}  # of each module: exported name -> name here
        self.open: list[str] = []
        self.exported = Counter(
            name for text in sources.values() for _, name in EXPORT.findall(text)
        )
        self.written: list[str] = []
        self.asked: dict[str, str] = {}  # modules asked for by import(), and one that asks
        self.used: set[str] = set()  # what was imported, by its name here

    def module(self, wanted: str, by: str) -> dict[str, str]:
        """What the module `wanted`, as `by` writes it, exports: the name of each here."""
        path = _beside(by, wanted)
        if path not in self.sources:
            raise BundleError(f"{by} imports {wanted}, which is not there.")
        if path in self.open:
            raise BundleError(f"{by} imports {wanted}, which needs {by} itself.")
        if path not in self.given:
            body, exports = self.body_of(path)
            place = len(self.given)
            if self.only_words(path):  # it has no name of its own that could be another's
                given = {n: f"${at:x}" for at, n in enumerate(exports, self.names())}
                body = NAMED.sub(lambda match: f"const {given[match[1]]} =", body)
                self.written.append(_put(body, given))
                self.given[path] = given
                return given
            given = {n: n if self.exported[n] == 1 else f"{n}_{place}" for n in exports}
            listed = ", ".join(exports)
            self.written.append(
                f"const {{{_renaming(given)}}} = (() => {{\n{body}\nreturn {{{listed}}};\n}})();"
            )
            self.given[path] = given
        return self.given[path]

    def body_of(self, path: str) -> tuple[str, list[str]]:
        """A module's text without its imports and exports, and the names that it exports."""
        self.open.append(path)
        text = self.sources[path]
        fixed = self.fixed(path)
        taken = []
        for names, wanted in IMPORT.findall(text):
            taken.append(self.imported(names, wanted, path))
            there = self.instead(_beside(path, wanted))
            fixed |= {own: there[name] for name, own in _listed(names) if name in there}
        text = IMPORT.sub("", text)
        if WORDS.search(path):
            text = FIXED.sub("", text)
        text = _put(text, fixed)
        for name in fixed:
            if not name.isupper() and re.search(HANDED.format(name), text):
                raise BundleError(f"{path}: {name} is of a words file, and those are only called.")
        exports = [name for _, name in EXPORT.findall(text)]
        text = EXPORT.sub(r"\1 \2", text)
        text = LATER.sub(lambda match: self.later(match[1], path), text)
        text = text.replace("import.meta.url", f'new URL("{path}", import.meta.url)')
        left = LEFT.search(text)
        if left:
            raise BundleError(f'{path}: "{left[0]}" is a form that cannot be put together.')
        self.open.pop()
        return "".join(taken) + text, exports

    def imported(self, names: str, wanted: str, by: str) -> str:
        """What stands for an import: nothing, but for a name that is another one here."""
        given = self.module(wanted, by)
        fixed = self.fixed(_beside(by, wanted))
        there = self.instead(_beside(by, wanted))
        out = []
        for name, own in _listed(names):
            if name in fixed:
                continue
            if name not in given:
                raise BundleError(f"{by} imports {name} from {wanted}, which does not export it.")
            self.used.add(given[name])
            if own != given[name] and name not in there:
                out.append(f"const {own} = {given[name]};\n")
        return "".join(out)

    def fixed(self, path: str) -> dict[str, str]:
        """The fixed sentences that a module exports, as they are written there."""
        constants = FIXED.findall(self.sources[path]) if WORDS.search(path) else []
        return {name: f"({text})" for name, text in constants}

    def names(self) -> int:
        """How many names were given so far."""
        return sum(len(given) for given in self.given.values())

    def only_words(self, path: str) -> bool:
        """Is it a file of words, with nothing in it that it does not export?"""
        return bool(WORDS.search(path)) and not OWN.search(self.sources[path])

    def instead(self, path: str) -> dict[str, str]:
        """What stands for the names of a words file where they are used."""
        return self.fixed(path) | (self.given[path] if self.only_words(path) else {})

    def later(self, wanted: str, by: str) -> str:
        """What stands for `import("...")`: the module, once the second script is there."""
        path = _beside(by, wanted)
        if path not in self.sources:
            raise BundleError(f"{by} imports {wanted}, which is not there.")
        self.asked.setdefault(path, by)
        return f'import("./{SECOND}").then(({{{MODULES}}}) => {MODULES}["{path}"])'


def _beside(by: str, wanted: str) -> str:
    """The path of what the module `by` calls `wanted`."""
    return posixpath.normpath(posixpath.join(posixpath.dirname(by), wanted))


def _listed(names: str) -> list[tuple[str, str]]:
    """What an import lists: the name of each there, and here."""
    listed = [name.split(" as ") for name in re.split(r"\s*,\s*", names.strip(" ,\n"))]
    return [(name[0].strip(), name[-1].strip()) for name in listed]


def _put(text: str, instead: Mapping[str, str]) -> str:
    """A script with something else for some names. One in small letters may be a word of a text
    too: it counts only where it is called."""
    if not instead:
        return text
    names = "|".join(name if name.isupper() else rf"{name}(?=\()" for name in instead)
    return re.sub(
        rf"(?:(?<![\w.$])|(?<=\.\.\.))(?:{names})(?!\w)", lambda match: instead[match[0]], text
    )


def _renaming(given: Mapping[str, str]) -> str:
    return ", ".join(name if name == own else f"{name}: {own}" for name, own in given.items())


def bundled(sources: Mapping[str, str], start: str) -> dict[str, str]:
    """The module `start` with all that it needs as one script, under its own name; with what is
    loaded later there is later.js too. Raises BundleError.

    Everything stands within one function, so that no name but one each has to be kept.
    """
    bundle = _Bundle(sources)
    body, _ = bundle.body_of(start)
    first = [*bundle.written, f"(() => {{\n{body}\n}})();"]
    if not bundle.asked:
        return {start: "\n".join(first)}
    later = _Bundle(sources)
    later.given = dict(bundle.given)
    later.asked = dict(bundle.asked)
    there = {own for given in bundle.given.values() for own in given.values()}
    modules = {}
    while waiting := [path for path in later.asked if path not in modules]:
        path = waiting[0]
        if path in bundle.given or path == start:
            what = "which is there from the start: import it at the top."
            raise BundleError(f"{later.asked[path]} asks by import() for {path}, {what}")
        given = later.module(posixpath.basename(path), path)
        modules[path] = f'"{path}": {{{", ".join(f"{n}: {own}" for n, own in given.items())}}}'
    taken = f"[{', '.join(sorted(later.used & there))}]"
    given_on = f"return {taken};"
    listed = f"return {{{', '.join(modules.values())}}};"
    return {
        start: _whole(SHARED, [*first, given_on]),
        SECOND: f'import {{{SHARED}}} from "./{start}";\n'
        + _whole(MODULES, [f"const {taken} = {SHARED};", *later.written, listed]),
    }


def _whole(name: str, lines: Sequence[str]) -> str:
    return "\n".join([f"export const {name} = (() => {{", *lines, "})();\n"])
