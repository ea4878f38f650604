"""What the phone gets: the compiled engine, the screens and the packs, as one set of files.

`site()` makes it all in memory; the server serves it, and it can as well be written to a folder.
"""

import ast
import hashlib
import json
import re
from collections import Counter
from collections.abc import Sequence
from functools import cache
from pathlib import Path
from typing import Any

import msgspec
import orjson
import pscript

from identify import core
from identify.bundle import bundled
from identify.core import exporting, importing, ranges
from identify.minified import minified, minified_by_hand
from identify.reference.compiled import pack_bytes, pack_schema
from identify.reference.folder import read_pack
from identify.reference.folder_rows import rows_of_pack
from identify.reference.kit import kit_to_pick
from identify.reference.loading import load_pack
from identify.reference.mark_tables import mark_tables
from identify.reference.marks_to_merge import marks_to_merge
from identify.reference.mistakes import Mistake, PackError
from identify.shipped import DEMO, PACKS, WEB

WRITTEN = (".css", ".html")  # what goes to the phone smaller than it is written
UNSENT = (".md", ".ts")  # what in web/ is for those who work on it
DEMO_NEEDS = {"pellmarsh", "tarrowby"}  # the packs that the demo collection speaks of
INDEX = "packs/index.json"
WRITTEN_DOWN = ".rows.json"  # packs/<id>.rows.json: a range as it was written down
SCHEMA = "packs/schema.json"  # by which a pack is looked at that comes as a file
MARKS = "packs/marks.json"  # the tables for core/marking.py
KIT = "packs/kit.json"  # features to pick from for a range of one's own
MERGED_MARKS = "packs/date-marks.json"  # the date marks that core/ranges/ merges into ranges
CERTIFICATE_PAGE = "certificate.html"
TRUSTING = (CERTIFICATE_PAGE, "certificate.css")  # for a server with an authority of its own
BUILD = "const BUILD = "  # what sw.js begins with once the site is gathered

# What the screens may call of the engine up to the first question.
EXPORTS = (
    "prepare", "new_session", "answered", "without", "mend",
    "find", "assess", "join", "settled", "narrowed", "seen_years", "marks_apart",
    "spread_all", "study_held", "assess_studied", "outside_named", "conditions", "incomplete",
    "record_fault", "misfits", "new_fields", "rings",
    "odd_rings",
)  # fmt: skip
# What the start does not wait for.
FURTHER_EXPORTS = (
    "why_not", "read_claim", "judge", "read_date", "says_not_known", "date_in_words",
    "read_money", "compare_money", "totals", "money_parts", "currencies",
    "duplicates", "want_words", "outside_alike", "known_now", "condition_rank", "moved",
    "file_record_fault", "entry_fault", "operation_fault", "photo_fault", "is_time", "is_sum",
    "fault_words",
    "read_mark", "reading_said", "nothing_said", "mark_span", "years_apart",
    "sitting", "portrait", "pictures", "differences", "never_recorded",
)  # fmt: skip
# What a range of one's own is tried with.
TRYING_EXPORTS = (
    "prepare", "without_errors", "to_part", "alike_with", "worths", "new_trial", "ask_on",
    "told_of", "first_asked", "unrecorded_features", "looks_to_take",
    "twin_of", "named_as",
)  # fmt: skip
MERGING_EXPORTS = (
    "tick", "heard", "in_reach", "merged", "mark_of", "sealed", "is_late", "pulled",
    "same_operation", "met", "forked", "parts_of_id", "for_merging", "comparable",
)  # fmt: skip
RANGING_EXPORTS = (
    "rows_of_records", "records_of_rows", "rows_needed", "usable", "compiled_range",
    "put_together", "said_by", "names_unknown", "learned_from", "take_in_learned",
    "from_pieces_alone", "gaps_told", "take_in_gaps",
    "effect_of_change",
    "column_uses", "kind_in_name", "read_lines", "listed_items",
    "unparsed", "parse_on", "rows_of_folder", "files_of_rows",
    "faults_of_records", "news_of_edition",
    "proposal_of", "plain_looks", "take_in_proposal",
)  # fmt: skip
TABLES_EXPORTS = (
    "too_heavy", "no_table_in", "sort_of_file", "no_workbook_in", "records_table",
    "errors_said", "merged_said", "formulas_said", "sheets_said", "without_sheet_errors",
    "encoding_of", "text_of_file", "no_text_in", "begun_table", "parse_on", "parsed_whole",
    "table_parsed", "too_large", "is_own", "column_letters",
    "new_reference", "headed", "cells_below", "column_shares", "table_read",
    "name_of_row", "keys_of", "new_importing", "row_matched", "rows_given_back", "written_as",
    "naming_of", "columns_for", "cells_of", "table_of", "records_csv", "records_workbook",
    "records_json", "records_file_name", "wants_page", "wants_file_name",
)  # fmt: skip
SHARED = ("lists", "clock_limits")  # what the second module uses of the first

MODULE = re.compile(r"(app|[\w-]+/[\w-]+)\.js$")  # goes into app.js or later.js
VENDORED = Path(__file__).parent / "vendored"
NATIVE = Path(core.__file__).parent / "native" / "values.js"
MADE = re.compile(r"(?m)^const (\w+) = ")
IN_ORDER = "in_order"  # of native/values.js: what sorts
FAST = ast.parse("PSCRIPT_OVERLOAD = False").body[0]


class _Parser(pscript.Parser):  # type: ignore[misc]
    """pscript, told that only lists are appended to; its own append looks each time."""

    def method_append(self, node: Any, base: str) -> str:
        return f"{base}.push({''.join(self.parse(node.arg_nodes[0]))})"

    def function_sorted(self, node: Any) -> str:
        """Each value's key worked out once; its own does so at every comparison."""
        if [keyword.name for keyword in node.kwarg_nodes] != ["key"]:
            raise pscript.JSError("The core sorts by one key.")
        values, key = (
            self.parse(argument) for argument in (node.arg_nodes[0], node.kwarg_nodes[0].value_node)
        )
        return f"{IN_ORDER}({''.join(values)}, {''.join(key)})"


class EngineError(Exception):
    """The core holds something that cannot be compiled for the phone."""


def _stripped(source: str) -> list[ast.stmt]:
    """A core module without imports, docstrings and annotations, every function set to plain
    operators (core uses + and * on numbers and text only, and == on neither lists nor dicts).
    """
    body = []
    for node in ast.parse(source).body:
        if isinstance(node, ast.ImportFrom):
            continue
        if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
            continue
        if isinstance(node, ast.FunctionDef):
            if ast.get_docstring(node) is not None:
                del node.body[0]
            node.body.insert(0, FAST)
        body.append(node)
    return body


def _made_by(node: ast.stmt) -> str:
    """The name of the function or constant that a statement makes, "" for none."""
    if isinstance(node, ast.FunctionDef):
        return node.name
    if isinstance(node, ast.Assign | ast.AnnAssign):
        return ast.unparse(node.targets[0] if isinstance(node, ast.Assign) else node.target)
    return ""


def _needed(body: list[ast.stmt], exports: Sequence[str]) -> list[ast.stmt]:
    """Of the core's functions and constants, the exported ones and what they use."""
    made: dict[str, ast.stmt] = {}
    for node in body:
        if (name := _made_by(node)) != "":
            made[name] = node
    kept: set[ast.stmt] = set()
    wanted = list(exports)
    while wanted:
        node = made[wanted.pop()]
        if node not in kept:
            kept.add(node)
            used = {name.id for name in ast.walk(node) if isinstance(name, ast.Name)}
            wanted += used & set(made)
    return [node for node in body if node in kept]


def engine_module(more: Sequence[str] = ()) -> str:
    """The engine as one ES module: what the screens call, `more` of the core, and what these use.

    Raises EngineError with what cannot be compiled.
    """
    return _module(core.FILES, (*EXPORTS, *more))


def further_module() -> str:
    """What the start does not wait for of the engine, as one ES module. Raises EngineError."""
    return _module(core.FILES, FURTHER_EXPORTS)


def trying_module() -> str:
    """What a range is tried with, as one ES module. Raises EngineError."""
    return _module(core.FILES, TRYING_EXPORTS)


def merging_module() -> str:
    """What devices need that share their records, as one ES module. Raises EngineError."""
    return _module((*SHARED, *core.MERGING), MERGING_EXPORTS)


def ranging_module() -> str:
    """What makes compiled ranges of rows, as one ES module. Raises EngineError."""
    names = [f"ranges/{name}" for name in ranges.FILES]
    return _module((*ranges.BESIDES, *names), RANGING_EXPORTS)


def tables_module() -> str:
    """What brings a list into the collection, and takes it out, as one ES module. Raises
    EngineError.
    """
    names = [f"importing/{name}" for name in importing.FILES]
    names += [f"exporting/{name}" for name in exporting.FILES]
    return _module((*core.FILES, *names), TABLES_EXPORTS)


@cache
def _module(names: Sequence[str], exports: Sequence[str]) -> str:
    body = []
    for name in names:
        path = Path(core.__file__).parent / f"{name}.py"
        body += _stripped(path.read_text("utf-8"))
    native = _native()
    made = Counter([*native, *(name for node in body if (name := _made_by(node)))])
    if twice := sorted(name for name, count in made.items() if count > 1):
        raise EngineError(f"One module cannot hold two of one name: {', '.join(twice)}.")
    source = ast.unparse(ast.Module(body=_needed(body, exports), type_ignores=[]))
    try:
        parser = _Parser(source)
        script = parser.dump()
    except pscript.JSError as error:
        raise EngineError(f"The engine cannot be compiled for the phone: {error}") from error
    used = {name for _, names in parser.vars.get_undefined() for name in names}
    if f"{IN_ORDER}(" in script:
        used.add(IN_ORDER)
    unknown = sorted(used - {"log", *native})
    if unknown:
        raise EngineError(f"The engine uses what the phone does not have: {', '.join(unknown)}.")
    asked = "".join(text for name, text in native.items() if name in used)
    return f"const log = Math.log;\n{asked}{script}\nexport {{ {', '.join(exports)} }};\n"


def _native() -> dict[str, str]:
    """What the core asks of its platform (core/native/), as the phone answers it, by name."""
    _, *parts = MADE.split(NATIVE.read_text("utf-8"))
    return {
        name: f"const {name} = {body}" for name, body in zip(parts[::2], parts[1::2], strict=True)
    }


def _packs(paths: Sequence[Path]) -> dict[str, bytes]:
    """packs/<id>.json for each pack, and packs/index.json that lists them."""
    files: dict[str, bytes] = {}
    index = []
    for path in paths:
        compiled = load_pack(path)
        url = f"packs/{compiled.id}.json"
        if url in (INDEX, KIT, MARKS, MERGED_MARKS, SCHEMA, *files):
            what = f'the id "{compiled.id}" is taken already. Rename the folder or the file.'
            raise PackError([Mistake(path.name, 0, "", what)])
        files[url] = pack_bytes(compiled)
        entry = {"id": compiled.id, "version": compiled.version, "url": url}
        index.append(entry | msgspec.to_builtins(compiled.range))
    files[INDEX] = orjson.dumps(index, option=orjson.OPT_SORT_KEYS)
    return files


def written_down(paths: Sequence[Path]) -> dict[str, bytes]:
    """packs/<id>.rows.json for each pack that is a folder: what others take into ranges of theirs.

    The app itself does not need it: the service worker is not told of it.
    """
    files: dict[str, bytes] = {}
    for path in paths:
        if path.is_dir():
            rows = rows_of_pack(read_pack(path)[0])
            said = {"format": 1, "kind": "identify range", "made": "", "rows": rows}
            files[f"packs/{rows['id']}{WRITTEN_DOWN}"] = orjson.dumps(said)
    return files


def demo_packs() -> list[Path]:
    """The folders of the demo packs, by name."""
    return sorted(path.parent for path in PACKS.glob("*/range.toml"))


def trusting_files() -> dict[str, bytes]:
    """The page that tells how a phone comes to trust a server's own authority."""
    return {name: (WEB / name).read_bytes() for name in TRUSTING}


def site(packs: Sequence[Path] = (), proposals: str = "") -> dict[str, bytes]:
    """Every file of the app by its path ("" is never one; "index.html" is the start page).

    packs: pack folders, or files compiled before; with none, the app alone. sw.js gets the list of
    the others and a name made from their contents, so that any change at all makes a new version.
    The modules of web/ go into two, app.js and later.js. The demo collection comes with the packs
    it speaks of, the tables of numbers and the kit always. proposals: the origin of
    another server, which the pages may speak to about proposals. Raises PackError for a pack with
    mistakes, EngineError for the core.
    """
    files = {
        path.relative_to(WEB).as_posix(): path.read_bytes()
        for path in sorted(WEB.rglob("*"))
        if path.is_file() and path.suffix not in UNSENT and path.name not in TRUSTING
    }
    modules = {name: files.pop(name).decode() for name in list(files) if MODULE.match(name)}
    scripts = bundled(modules, "app.js")
    files |= {name: minified_by_hand(text).encode() for name, text in scripts.items()}
    texts = {name: files[name].decode() for name in files if name.endswith(WRITTEN)}
    if proposals:
        own = "default-src 'self'"
        texts["index.html"] = texts["index.html"].replace(
            own, f"{own}; connect-src 'self' {proposals.rstrip('/')}"
        )
    texts |= {"engine.js": engine_module(), "further.js": further_module()}
    texts |= {"trying.js": trying_module(), "tables.js": tables_module()}
    texts |= {"merging.js": merging_module(), "ranging.js": ranging_module()}
    files |= {name: minified(name, text).encode() for name, text in texts.items()}
    files["toml.js"] = (VENDORED / "toml.js").read_bytes()
    if {path.stem for path in packs} >= DEMO_NEEDS:
        files["packs/demo.json"] = DEMO.read_bytes()
    files[MARKS] = orjson.dumps(mark_tables(), option=orjson.OPT_SORT_KEYS)
    files[KIT] = orjson.dumps(kit_to_pick(), option=orjson.OPT_SORT_KEYS)
    files[MERGED_MARKS] = orjson.dumps(marks_to_merge(), option=orjson.OPT_SORT_KEYS)
    files[SCHEMA] = orjson.dumps(pack_schema(), option=orjson.OPT_SORT_KEYS)
    files.update(_packs(packs))
    digest = hashlib.sha256()
    for name in sorted(files):
        digest.update(name.encode() + b"\0" + hashlib.sha256(files[name]).digest())
    worker = files.pop("sw.js")
    names = ["./", *sorted(set(files) - {"index.html"})]
    head = f'{BUILD}"{digest.hexdigest()[:16]}"; const FILES = {json.dumps(names)};\n'
    return files | {"sw.js": head.encode() + worker}
