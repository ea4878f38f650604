"""The engine's types for the scripts of web/: web/data/engine-types.d.ts, made of core/types.

`python -m tests.web_types` writes it anew; a test fails while it is not as the Python says. The
phone never gets it: editors and checkers read it, through the JSDoc of the scripts.
"""

import ast
import io
import tokenize
from collections.abc import Iterator, Sequence
from functools import cache
from pathlib import Path

from identify import core
from identify.core import exporting, importing, ranges
from identify.phone import (
    EXPORTS,
    FURTHER_EXPORTS,
    MERGING_EXPORTS,
    RANGING_EXPORTS,
    TABLES_EXPORTS,
    TRYING_EXPORTS,
)
from identify.shipped import WEB

CORE = Path(core.__file__).parent
FILE = WEB / "data" / "engine-types.d.ts"
NAMES = (
    *core.FILES, *core.MERGING, *(f"ranges/{one}" for one in ranges.FILES),
    *(f"importing/{one}" for one in importing.FILES),
    *(f"exporting/{one}" for one in exporting.FILES),
)  # fmt: skip
MODULES = {
    "EngineModule": (
        "engine.js, and further.js with it: what the screens may call.",
        (*EXPORTS, *FURTHER_EXPORTS),
    ),
    "FurtherModule": ("further.js: what the start does not wait for.", FURTHER_EXPORTS),
    "TryingModule": ("trying.js: what a range of one's own is tried with.", TRYING_EXPORTS),
    "MergingModule": ("merging.js: the rules of syncing.", MERGING_EXPORTS),
    "TablesModule": ("tables.js: lists into the collection, and out of it.", TABLES_EXPORTS),
    "RangingModule": ("ranging.js: compiled ranges from rows.", RANGING_EXPORTS),
}
PLAIN = {
    "str": "string", "int": "number", "float": "number", "bool": "boolean", "Any": "any",
}  # fmt: skip


class UnknownTypeError(Exception):
    """A type that this has no TypeScript for."""


def said(text: str, indent: str = "") -> str:
    """A comment of JSDoc; nothing for no text."""
    lines = [line.strip() for line in text.strip().splitlines()]
    if not lines:
        return ""
    if len(lines) == 1:
        return f"{indent}/** {lines[0]} */\n"
    inner = "".join(f"{indent} * {line}".rstrip() + "\n" for line in lines)
    return f"{indent}/**\n{inner}{indent} */\n"


def typed(node: ast.expr) -> str:
    """A type of Python as one of TypeScript."""
    if isinstance(node, ast.Constant) and node.value is None:
        return "null"
    if isinstance(node, ast.Name):
        return PLAIN.get(node.id, node.id.lstrip("_"))
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.BitOr):
        return f"{typed(node.left)} | {typed(node.right)}"
    if isinstance(node, ast.Subscript) and isinstance(node.value, ast.Name):
        inside = node.slice.elts if isinstance(node.slice, ast.Tuple) else [node.slice]
        match node.value.id:
            case "Literal":
                return " | ".join(ast.unparse(one).replace("'", '"') for one in inside)
            case "list" | "Sequence":
                return f"Array<{typed(inside[0])}>"
            case "dict":
                return f"Record<string, {typed(inside[1])}>"
            case "Annotated":  # a pair: a list in Python, of which these are the members
                return f"[{', '.join(typed(one) for one in inside[1:])}]"
            case "NotRequired":
                return typed(inside[0])
    raise UnknownTypeError(ast.unparse(node))


class _File:
    """One module of types, with its comments by line."""

    def __init__(self, path: Path) -> None:
        source = path.read_text("utf-8")
        self.tree = ast.parse(source)
        tokens = list(tokenize.generate_tokens(io.StringIO(source).readline))
        self.comments = {t.start[0]: t for t in tokens if t.type == tokenize.COMMENT}

    def about(self, node: ast.stmt) -> str:
        """The comment behind a line, or on the lines above it."""
        if node.end_lineno in self.comments:
            return self.comments[node.end_lineno].string.removeprefix("# ")
        lines = []
        at = node.lineno - 1
        while (
            at in self.comments and not self.comments[at].line[: self.comments[at].start[1]].strip()
        ):
            lines.append(self.comments[at].string.removeprefix("# "))
            at -= 1
        return "\n".join(reversed(lines))

    def fields(self, node: ast.ClassDef) -> Iterator[str]:
        for field in node.body:
            if isinstance(field, ast.AnnAssign):
                optional = ast.unparse(field.annotation).startswith("NotRequired[")
                mark = "?" if optional else ""
                yield (
                    f"{said(self.about(field), '  ')}  {ast.unparse(field.target)}{mark}: "
                    f"{typed(field.annotation)};\n"
                )

    def declared(self, node: ast.stmt) -> str:
        """A TypedDict or an alias as a declaration; nothing for whatever else stands there."""
        if isinstance(node, ast.ClassDef):
            bases = [typed(base) for base in node.bases if ast.unparse(base) != "TypedDict"]
            extends = f" extends {', '.join(bases)}" if bases else ""
            about = said(ast.get_docstring(node) or "")
            return (
                f"{about}export interface {node.name}{extends} {{\n{''.join(self.fields(node))}}}\n"
            )
        if not isinstance(node, ast.Assign):
            return ""
        name = ast.unparse(node.targets[0]).lstrip("_")
        if isinstance(node.value, ast.Call) and ast.unparse(node.value.func) == "TypedDict":
            names = ast.literal_eval(
                ast.Dict(
                    node.value.args[1].keys,
                    [ast.Constant(ast.unparse(v)) for v in node.value.args[1].values],
                )
            )
            fields = "".join(f"  {key}: {PLAIN[kind]};\n" for key, kind in names.items())
            return f"export interface {name} {{\n{fields}}}\n"
        if isinstance(
            node.value, ast.Call
        ):  # a TypeVar: what is typed by it is not called from web/
            return ""
        return f"{said(self.about(node))}export type {name} = {typed(node.value)};\n"

    def declarations(self) -> Iterator[str]:
        yield from filter(None, (self.declared(node) for node in self.tree.body))


@cache
def functions() -> dict[str, ast.FunctionDef]:
    """The functions of the core by name."""
    return {
        node.name: node
        for name in NAMES
        for node in ast.parse((CORE / f"{name}.py").read_text("utf-8")).body
        if isinstance(node, ast.FunctionDef)
    }


def module(name: str, about: str, exports: Sequence[str]) -> str:
    """A compiled module of the engine, as the interface of what it exports."""
    known = functions()
    out = []
    for function in (known[export] for export in exports):
        taken = ", ".join(f"{a.arg}: {typed(a.annotation)}" for a in function.args.args)
        about_it = said(ast.get_docstring(function) or "", "  ")
        out.append(f"{about_it}  {function.name}({taken}): {typed(function.returns)};\n")
    return f"{said(about)}export interface {name} {{\n{''.join(out)}}}\n"


def declarations() -> str:
    """The whole file."""
    parts = ["// Made by python -m tests.web_types of identify/core/types/; change it there.\n"]
    for path in sorted((CORE / "types").glob("*.py")):
        if path.stem != "__init__":
            parts += _File(path).declarations()
    parts += [module(name, about, exports) for name, (about, exports) in MODULES.items()]
    return "\n".join(parts)


if __name__ == "__main__":
    FILE.write_text(declarations(), "utf-8")
    print(f"{FILE.name} is as the Python says.")
