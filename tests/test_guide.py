"""The guide tells the truth: what DEVELOPERS.md and every README.md name is there."""

import ast
import re
from functools import cache
from pathlib import Path

import pytest

from identify.cli import parser

ROOT = Path(__file__).resolve().parent.parent
AREAS = ("identify", "web", "tests", "fixtures")
PAGES = sorted(
    [ROOT / "DEVELOPERS.md", ROOT / "README.md"]
    + [page for area in AREAS for page in (ROOT / area).rglob("README.md")]
)
ENDINGS = "py|js|css|html|toml|csv|json|md|svg|jpg|sqlite|xlsx|webmanifest"
SPAN = re.compile(r"`([^`\n]+)`")
PATH = re.compile(rf"[\w*<>./-]*[\w*<>-]\.(?:{ENDINGS})|(?:[\w*<>.-]+/)+[\w*<>.-]*")
NAME = re.compile(r"[A-Za-z_]\w*(?:\.[A-Za-z_]\w*)*(?:\(\))?")
WITHIN = re.compile(rf"((?:`\w+`(?:, | and | or )?)+) in `([\w/.-]+\.(?:{ENDINGS}))`")
LINK = re.compile(r"\[[^\]]*\]\(([^)\s]+)\)")
WRITTEN_OUT = re.compile(
    rf"(?<![\w./-])(?:{'|'.join(AREAS)})/[\w/.-]*\w\.(?:py|js|css|toml|csv|md)\b"
)


def prose(page: Path) -> str:
    """A page without its blocks of code: what they hold is text of other programs, or invented."""
    text = re.sub(r"(?ms)^```.*?^```$", "", page.read_text("utf-8"))
    return re.sub(r"(?m)^    .*$", "", text)


def sources(*endings: str) -> list[Path]:
    return [
        path
        for area in AREAS
        for path in sorted((ROOT / area).rglob("*"))
        if (not endings or path.suffix in endings) and path.name != Path(__file__).name
    ]


def without_docstrings(tree: ast.AST) -> ast.AST:
    for node in ast.walk(tree):
        body = getattr(node, "body", None)
        if isinstance(body, list):
            node.body = [
                one
                for one in body
                if not (isinstance(one, ast.Expr) and isinstance(one.value, ast.Constant))
            ]
    return tree


@cache
def code_of(path: Path) -> str:
    """A source file without its comments and docstrings."""
    text = path.read_text("utf-8")
    if path.suffix == ".py":
        return ast.unparse(without_docstrings(ast.parse(text)))
    if path.suffix in (".js", ".css"):
        return re.sub(r"(?s)/\*.*?\*/|(?m:^\s*//[^\n]*$)", "", text)
    return text


@cache
def all_code() -> str:
    return "\n".join(code_of(path) for path in sources(".py", ".js", ".css", ".html", ".toml"))


@cache
def words() -> frozenset[str]:
    """Every name and word in the code, files' own names, and the columns of tables."""
    found = set(re.findall(r"\w+", all_code()))
    found |= {path.stem for path in sources(".py", ".js", ".toml")}
    found |= set(re.findall(r"\w+", (ROOT / "pyproject.toml").read_text("utf-8")))
    for path in sources(".csv"):
        if {"packs", "template", "marks"} & set(path.relative_to(ROOT).parts):
            found |= set(re.findall(r"\w+", path.read_text("utf-8").split("\n", 1)[0]))
    return frozenset(found)


@cache
def made() -> frozenset[str]:
    """Every function, class and constant that the code makes."""
    found = set(re.findall(r"\b(?:def|class|function|const|let) \*?(\w+)", all_code()))
    return frozenset(
        found | set(re.findall(r"(?m)^\s*([A-Z][A-Z0-9_]+)(?:: [^=\n]+)? = ", all_code()))
    )


def is_there(path: str, page: Path) -> bool:
    """Whether a path is one of ours, from the page's folder or the top, or a text in the code."""
    pattern = re.sub(r"<[^>]*>", "*", path).rstrip("/")
    for base in (page.parent, ROOT):
        if any(base.glob(pattern) if pattern else [base]):
            return True
    if any(ROOT.glob(f"fixtures/packs/*/{pattern}")):
        return True
    if page.parent == ROOT and "/" not in pattern and any(one.name == path for one in sources()):
        return True
    return f"'{path}'" in all_code() or f'"{path}"' in all_code()


def wrong_span(span: str, page: Path) -> str:
    """What is wrong with a text in backticks, or ""."""
    if span.startswith(("python -m", ".venv/bin/python -m", "pytest")):
        return wrong_command(span)
    if span.startswith("/"):
        route = re.sub(r"[<{][^>}]*[>}]", "", span.partition("?")[0]).rstrip("/")
        return "" if route.split("//")[0] in all_code() else "no such address"
    if PATH.fullmatch(span):
        return "" if is_there(span, page) else "no such file"
    if re.fullmatch(r"--[\w-]+", span):
        return "" if span == "--help" or f"'{span}'" in all_code() else "no such option"
    if re.fullmatch(r"\w+(,\w+)+", span):
        return "" if set(span.split(",")) <= words() else "no such columns"
    if NAME.fullmatch(span):
        parts = span.removesuffix("()").split(".")
        if span.endswith("()") or (len(parts) == 1 and re.fullmatch(r"[A-Z][A-Z0-9_]{2,}", span)):
            given = f"'{span}'" in all_code()
            return "" if given or parts[-1] in made() else "nothing of this name is made"
        return "" if set(parts) <= words() else "no such name"
    return ""


def wrong_command(line: str) -> str:
    """What is wrong with a command line, or ""."""
    for option in re.findall(r"(?<= )--[\w-]+", line):
        ours = f"'{option}'" in all_code()
        if not ours and not option.startswith("--hypothesis") and option != "--dist":
            return f"no option {option}"
    for path in re.findall(r"\b(?:tests|identify)(?:/[\w.]+)+", line):
        if not (ROOT / path).exists():
            return f"no file {path}"
    found = re.search(r"python -m ([\w.]+)(?: ([a-z][\w-]*))?", line)
    if found and found[1] == "identify":
        return "" if found[2] is None or found[2] in commands() else "no such command"
    if found and found[1].startswith("tests"):
        module = ROOT / found[1].replace(".", "/")
        return "" if module.is_dir() or module.with_suffix(".py").is_file() else "no such module"
    return ""


@cache
def commands() -> frozenset[str]:
    actions = [one for one in parser()._actions if hasattr(one, "_name_parser_map")]
    return frozenset(name for one in actions for name in one._name_parser_map)


def anchors(page: Path) -> set[str]:
    """The headings of a page, as links name them."""
    heads = re.findall(r"(?m)^#+ (.+)$", page.read_text("utf-8"))
    return {re.sub(r"[^\w\- ]", "", head.lower()).replace(" ", "-") for head in heads}


def name_of(page: Path) -> str:
    return page.relative_to(ROOT).as_posix()


@pytest.mark.parametrize("page", PAGES, ids=name_of)
def test_what_stands_in_backticks_is_there(page):
    wrong = {span: wrong_span(span, page) for span in SPAN.findall(prose(page))}
    assert {span: why for span, why in wrong.items() if why} == {}


@pytest.mark.parametrize("page", PAGES, ids=name_of)
def test_a_name_that_is_said_to_be_in_a_file_is_in_that_file(page):
    wrong = []
    for names, file in WITHIN.findall(prose(page)):
        path = next((base / file for base in (page.parent, ROOT) if (base / file).is_file()), None)
        text = code_of(path) if path else ""
        wrong += [
            f"{name} in {file}"
            for name in SPAN.findall(names)
            if not re.search(rf"\b{name}\b", text)
        ]
    assert wrong == []


@pytest.mark.parametrize("page", PAGES, ids=name_of)
def test_a_link_leads_somewhere(page):
    wrong = []
    for link in LINK.findall(re.sub(r"`[^`\n]*`", "", prose(page))):
        if not re.match(r"[a-z]+:", link):
            file, _, anchor = link.partition("#")
            target = (page.parent / file).resolve() if file else page
            if not target.exists() or (anchor and anchor not in anchors(target)):
                wrong.append(link)
    assert wrong == []


def test_the_guide_is_read_in_one_sitting():
    assert len((ROOT / "DEVELOPERS.md").read_text("utf-8").splitlines()) <= 250


def test_a_path_that_a_source_file_writes_out_is_there():
    wrong = [
        f"{name_of(path)}: {named}"
        for path in sources(".py", ".js", ".css", ".toml")
        for named in WRITTEN_OUT.findall(path.read_text("utf-8"))
        if not (ROOT / named).exists()
    ]
    assert wrong == []


@pytest.mark.parametrize(
    "span",
    [
        "identify/nowhere.py",
        "nowhere.py",
        "tests/nowhere/",
        "fixtures/packs/<name>/nowhere.toml",
        "nobody_made_this()",
        "nobody_made_this",
        "session.nobody_made_this",
        "NOBODY_MADE_THIS",
        "--nobody-made-this",
        "/api/nowhere/<id>",
        "python -m identify nowhere",
        "python -m identify lab --nobody-made-this",
        "python -m tests.nowhere",
        "pytest tests/nowhere.py",
        "number,nobody_made_this",
    ],
)
def test_what_is_nowhere_is_noticed(span):
    assert wrong_span(span, ROOT / "DEVELOPERS.md")


@pytest.mark.parametrize(
    "span",
    [
        "identify/core/",
        "identify/core/belief.py",
        "fixtures/packs/<name>/range.toml",
        "believe()",
        "believe",
        "EXPORTS",
        "--seed",
        "/api/pull",
        "python -m identify lab",
        "pytest -s tests/outside",
        "id,item,name",
    ],
)
def test_what_is_there_is_let_through(span):
    assert wrong_span(span, ROOT / "DEVELOPERS.md") == ""
