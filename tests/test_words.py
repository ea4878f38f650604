"""The words that people read: what was given up stays away, in all that is shown or printed.

The words that the app uses instead are in the glossary of DEVELOPERS.md.
"""

import ast
import csv
import re
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

from identify.shipped import ROOT, WEB

# What was given up (a pattern, in any case) -> what is said instead.
GIVEN_UP = {
    r"\btrash\b": "bin",
    r"\bthe reference\b": "the range",
    r"\breference packs?\b": "range",
    r"\bspeaks? (strongly|clearly|a little|against|for it)\b": "counts",
    r"\bgoes? (badly|well) with\b": "fits, does not fit",
    r"(?<!there )\bis no (?!longer\b|more\b|fault\b)": "is not a",
    r"\bparted by\b": "separated by",
    r"\bpart (it|them) into\b": "split",
    r"\banew\b(?! in Munich)": "again",  # the patent office was
    r".\bput (by|aside)\b": "set aside",
    r"(certificate|authority|minutes|code)\b.* (is|are) over\b": "has expired, are up",
    r"\blook that\b": "check",
    r"\blook after the (disk|server)\b": "check",
    r"\balso when\b": "even when",
    r"\broom runs short\b": "space runs short",
    r"\byou own (it|none|one already|this)\b": "in your collection",
    r"\b(you|i) want it\b(?! \{| with| at| up)": "on your list",
    r"\bamong your wants\b": "on your list",
    r"\bown or want\b": "yours or wanted",
    r"\b(brought|bring|brings) (it |them )?in a? ?(spreadsheet|file|list)\b": "import",
    r"\bhand(ed)? (it |on)\b": "share",
    r"\bon purpose\b": "keep both",
    r"\bwhat moved\b": "changed numbers",
    r"\bwhat was changed\b(?! again)": "history",
    r"\b(it )?cannot be said\b": "can’t say",
    r"^can.t tell$": "can’t see it",
    r"^there is none$": "No ..., None",
    r"^(nothing|nothing there|neither|nobody|nowhere)$": "No ...",
    r"\boriginal as a whole\b": "all original",
    r"\bin just those years\b": "then",
    r"\bis of \d{4}\b": "is from",
    r"\bof one year\b": "from the same year",
    r"\btank on its side\b": "tank wagon",
    r"\bunpowered end unit\b": "dummy (no motor)",
    r"\btrader.s wagon\b": "private owner wagon",
    r"\bguard.s van with a platform\b": "brake van with a veranda",
    r"\btell what you see\b": "point something out",
    r"\blook wider\b": "look at all pieces",
    r"\bsort of piece\b": "kind of piece",
    r"\bsmoke plates?\b": "smoke deflectors",
    r"^guard.s van\b": "brake van",
    r"\bcold store van\b": "refrigerator van",
    r"\bunpowered\b": "dummy",
    r"\btrader\b": "private owner",
    r"\bbody like a box\b": "box-shaped body",
    r"\blevel windows\b": "flush windows",
    r"\bsays no year\b": "gives no year",
    r"\bmore is asked\b": "the price is above",
    r"^none yet\b": "no ... yet",
    r"\bput (?:(?!set )[^.])*\baside\b": "set aside",
    r"\bstands? (twice|under|here|first|alone|in line)\b": "is there twice, is under",
    r"\b(take|took|taken|takes) (\w+ )?(off by|away (again|it|them))\b": "unpaired, removed",
    r"\bshut out\b": "unpaired",
    r"\ba row a\b": "a row for each",
    r"\bcarry no position\b": "do not say where they were taken",
}
# On a screen no command, file or id is named either.
NOT_ON_A_SCREEN = {
    r"python -m": "the instructions explain how",
    r"\breadme\b": "the instructions that come with the app",
    r"\bpacks?\b": "range",
    r"\bcompiled?\b": "made",
    r"\btak(e|en) (it|them) away\b": "remove",
}
SCRIPT = re.compile(r'//[^\n]*|/\*.*?\*/|"(?:[^"\\\n]|\\.)*"|`', re.DOTALL)
INSIDE = re.compile(r"\\.|\$\{|`", re.DOTALL)
BRACES = re.compile(r'//[^\n]*|"(?:[^"\\\n]|\\.)*"|[`{}]')
SHOWN = re.compile(r"[a-z’] [a-zA-Z“$]|^[A-Z][a-z]+$")  # a sentence or a title, no key of the code


def written(node: ast.AST) -> str:
    """A text of Python; what is put in stands as {}."""
    if isinstance(node, ast.JoinedStr):
        return "".join(written(part) for part in node.values)
    return str(node.value) if isinstance(node, ast.Constant) else "{}"


def texts_of_python(path: Path) -> Iterator[str]:
    tree = ast.parse(path.read_text("utf-8"))
    inside = {
        part for node in ast.walk(tree) if isinstance(node, ast.JoinedStr) for part in node.values
    }
    inside |= {node.value for node in ast.walk(tree) if isinstance(node, ast.Expr)}  # docstrings
    for node in ast.walk(tree):
        if isinstance(node, ast.JoinedStr | ast.Constant) and node not in inside:
            yield written(node)


def end_of_template(text: str, at: int) -> tuple[int, str]:
    """Where a template that begins before `at` ends, and what it says; what is put in as {}."""
    said = ""
    while found := INSIDE.search(text, at):
        said += text[at : found.start()]
        at = found.end()
        if found[0] == "`":
            break
        if found[0] == "${":
            said += "{}"
            at = end_of_braces(text, at)
    return at, said


def end_of_braces(text: str, at: int) -> int:
    depth = 1
    while depth > 0 and (found := BRACES.search(text, at)):
        at = found.end()
        if found[0] == "`":
            at, _ = end_of_template(text, at)
        depth += {"{": 1, "}": -1}.get(found[0], 0)
    return at


def texts_of_script(path: Path) -> Iterator[str]:
    """The texts of JavaScript; those with a + between them are one."""
    text = path.read_text("utf-8")
    at, said, before = 0, "", 0
    while found := SCRIPT.search(text, at):
        at = found.end()
        if found[0][0] == "/":
            continue
        more = found[0][1:-1]
        if found[0] == "`":
            at, more = end_of_template(text, at)
        if text[before : found.start()].strip() != "+":
            yield said
            said = ""
        said += more
        before = at
    yield said


def texts_of_toml(value: object) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, list | dict):
        for each in value.values() if isinstance(value, dict) else value:
            yield from texts_of_toml(each)


def texts_of_table(path: Path) -> Iterator[str]:
    with path.open(encoding="utf-8", newline="") as file:
        for row in csv.reader(file):
            yield from row


SCREENS = sorted(WEB.rglob("*.js"))
PROGRAM = sorted((ROOT / "identify").rglob("*.py"))
DATA = [
    path
    for folder in (
        "fixtures/kit",
        "fixtures/marks",
        "fixtures/packs",
        "identify/reference/template",
    )
    for path in sorted((ROOT / folder).rglob("*.*"))
    if path.suffix in (".toml", ".csv")
]


def texts(path: Path) -> list[str]:
    """What of a file people may come to read."""
    if path.suffix == ".py":
        found = texts_of_python(path)
    elif path.suffix == ".js":
        found = texts_of_script(path)
    elif path.suffix == ".toml":
        found = texts_of_toml(tomllib.loads(path.read_text("utf-8")))
    else:
        found = texts_of_table(path)
    return [text for text in found if SHOWN.search(text)]


def given_up(path: Path, patterns: dict[str, str]) -> list[str]:
    return [
        f"{path.relative_to(ROOT)}: “{text}”: say {instead}"
        for text in texts(path)
        for pattern, instead in patterns.items()
        if re.search(pattern, text, re.IGNORECASE)
    ]


def test_no_given_up_word_is_shown():
    assert [
        wrong for path in [*SCREENS, *PROGRAM, *DATA] for wrong in given_up(path, GIVEN_UP)
    ] == []


def test_no_screen_names_a_command_or_a_word_of_the_workshop():
    assert [wrong for path in SCREENS for wrong in given_up(path, NOT_ON_A_SCREEN)] == []


@pytest.mark.parametrize(
    ("name", "content", "found"),
    [
        ("a.js", 'el("p", {}, "It is in " +\n  "the trash.");', 1),
        ("a.js", "const all = `You own it: ${name(`${the} trash`)}` + `!`;", 1),
        ("a.js", '// the trash\nconst way = "trash";', 0),
        ("a.py", '"""The trash."""\nWRONG = f"{name} is no backup. " "Name one."', 1),
        ("a.py", 'said = "There is no signal."', 0),
        ("a.toml", 'states = [{ id = "none", name = "Nothing there" }]', 1),
    ],
)
def test_what_was_given_up_is_found(tmp_path, monkeypatch, name, content, found):
    path = tmp_path / name
    path.write_text(content, "utf-8")
    monkeypatch.setitem(globals(), "ROOT", tmp_path)
    assert len(given_up(path, GIVEN_UP)) == found
