"""What the core may be written in: a list of what is allowed, so that the unknown is refused.

`refusals(source)` gives one sentence for everything that JavaScript would read otherwise.
"""

import ast
from collections.abc import Iterator

PLAIN = (
    ast.Module, ast.FunctionDef, ast.arguments, ast.arg, ast.Return, ast.Assign, ast.AnnAssign,
    ast.For, ast.While, ast.If, ast.Break, ast.Continue, ast.Expr, ast.Delete, ast.BoolOp, ast.And,
    ast.Or, ast.BinOp, ast.Add, ast.Sub, ast.Mult, ast.Div, ast.FloorDiv, ast.UnaryOp, ast.Not,
    ast.USub, ast.IfExp, ast.Lambda, ast.Dict, ast.List, ast.ListComp, ast.comprehension,
    ast.Compare, ast.Eq, ast.NotEq, ast.Lt, ast.LtE, ast.Gt, ast.GtE, ast.Is, ast.IsNot, ast.In,
    ast.NotIn, ast.Call, ast.keyword, ast.Constant, ast.Subscript, ast.Slice, ast.Name, ast.Load,
    ast.Store, ast.ImportFrom, ast.alias,
)  # fmt: skip
INSTEAD = {
    "Tuple": "a list",
    "Set": "a list",
    "SetComp": "a list",
    "DictComp": "a loop that fills a dict",
    "GeneratorExp": "a list comprehension",
    "JoinedStr": "data, and let the screen write the sentence",
    "Mod": "a count kept in a variable",
    "Pow": "a product",
    "AugAssign": "x = x + y",
    "Assert": "a returned code",
    "Raise": "a returned code",
    "Try": "a test with `in` beforehand",
    "ClassDef": "functions over dicts",
    "Attribute": "a key of a dict",
    "Import": "an import from inside core",
    "Starred": "a list",
    "NamedExpr": "an assignment of its own",
}
BUILTINS = {"len", "range", "min", "max", "abs", "int", "sorted", "log"}
METHODS = {"append", "upper", "get"}
OF_ANNOTATIONS = {  # imports that annotations need; annotations never reach JavaScript
    "typing": {"Any", "Literal", "TypeGuard"},
    "collections.abc": {"Sequence", "Mapping"},
}
RESERVED = set(
    """
    abstract arguments await boolean byte case catch char const debugger default delete do
    double enum eval export extends false final finally float function goto implements
    instanceof interface let long native new null package private protected public short
    static super switch synchronized this throw throws transient true typeof undefined var
    void volatile window yield
    """.split()
)
KEYS = {"constructor", "length", "hasOwnProperty", "__proto__", "prototype"}


def where(node: ast.AST, text: str) -> str:
    return f"line {getattr(node, 'lineno', 1)}: {text}"


def functions_of(tree: ast.Module) -> list[ast.FunctionDef]:
    return [node for node in tree.body if isinstance(node, ast.FunctionDef)]


def truth_functions(tree: ast.Module) -> set[str]:
    """Functions here that say they return bool."""
    returned = {f.name: ast.unparse(f.returns) for f in functions_of(tree) if f.returns}
    return {name for name, text in returned.items() if text == "bool" or "TypeGuard[" in text}


def is_truth(node: ast.expr, known: set[str]) -> bool:
    """Whether an expression is surely True or False, and not a container or a number."""
    if isinstance(node, ast.BoolOp):
        return all(is_truth(value, known) for value in node.values)
    if isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.Not):
        return is_truth(node.operand, known)
    if isinstance(node, ast.Call):
        return isinstance(node.func, ast.Name) and node.func.id in known
    if isinstance(node, ast.Name):
        return node.id in known
    return isinstance(node, ast.Compare) or (
        isinstance(node, ast.Constant) and isinstance(node.value, bool)
    )


def stored(nodes: Iterator[ast.AST]) -> list[ast.Name]:
    return [n for n in nodes if isinstance(n, ast.Name) and isinstance(n.ctx, ast.Store)]


def outside_comprehensions(node: ast.AST) -> Iterator[ast.AST]:
    for child in ast.iter_child_nodes(node):
        if not isinstance(child, ast.ListComp | ast.Lambda):
            yield child
            yield from outside_comprehensions(child)


def check_call(node: ast.Call, known: set[str]) -> Iterator[str]:
    if isinstance(node.func, ast.Attribute):
        if node.func.attr not in METHODS:
            yield where(node, f"write a function instead of the method .{node.func.attr}().")
    elif isinstance(node.func, ast.Name):
        name = node.func.id
        if name not in known and name not in BUILTINS:
            yield where(
                node, f"{name}() is not in the core, and not on the short list of builtins."
            )
        by_key = [k.arg for k in node.keywords] == ["key"]
        if name == "sorted" and not (by_key and isinstance(node.keywords[0].value, ast.Lambda)):
            yield where(node, "give sorted() a key, a lambda that returns one number or text.")
        elif name == "range" and any(
            isinstance(inner, ast.Call) and ast.unparse(inner.func) != "len"
            for argument in node.args
            for inner in ast.walk(argument)
        ):
            yield where(
                node, "work out the bounds of range() beforehand: JavaScript does at each step."
            )
        elif name != "sorted" and node.keywords:
            yield where(node, f"call {name}() with arguments by position.")


def check_node(node: ast.AST, known: set[str], deep: int) -> Iterator[str]:
    name = type(node).__name__
    if isinstance(node, ast.Call):
        yield from check_call(node, known)
    elif isinstance(node, ast.ImportFrom):
        names = {alias.name for alias in node.names}
        ours = 0 < node.level <= deep or names <= OF_ANNOTATIONS.get(node.module, set())
        if not ours and not (node.module == "math" and names == {"log"}):
            yield where(node, "import from inside core, or log from math, only.")
    elif isinstance(node, ast.Subscript) and isinstance(node.slice, ast.UnaryOp):
        yield where(node, "count an index from the front instead of a negative index.")
    elif isinstance(node, ast.Slice):
        if node.step or any(isinstance(b, ast.UnaryOp) for b in (node.lower, node.upper)):
            yield where(node, "write a slice with bounds from the front and no step.")
    elif isinstance(node, ast.Dict):
        for key in node.keys:
            plain = isinstance(key, ast.Constant) and isinstance(key.value, str)
            if not plain or not key.value.isidentifier() or key.value in KEYS:
                yield where(node, "use text keys that are plain words, and not JavaScript's own.")
    elif isinstance(node, ast.Compare):
        for op, right in zip(node.ops, node.comparators, strict=True):
            nothing = isinstance(right, ast.Constant) and right.value is None
            if isinstance(op, ast.Is | ast.IsNot) != nothing:
                yield where(node, "use `is` with None, and only with None.")
            if isinstance(right, ast.List | ast.Dict) and not isinstance(op, ast.In | ast.NotIn):
                yield where(node, "compare numbers and text, not lists or dicts.")
    elif isinstance(node, ast.BinOp) and any(
        isinstance(side, ast.List | ast.ListComp) for side in (node.left, node.right)
    ):
        yield where(node, "use append, filled() or plus() instead of + and * on lists.")
    elif isinstance(node, ast.Name) and node.id in RESERVED:
        yield where(node, f"call it something else: {node.id} is a word of JavaScript.")
    elif not isinstance(node, PLAIN) and not isinstance(node, ast.Attribute):
        yield where(node, f"write {INSTEAD.get(name, 'something plainer')} instead of {name}.")


def check_function(f: ast.FunctionDef, truths: set[str]) -> Iterator[str]:
    a = f.args
    if a.defaults or a.kwonlyargs or a.vararg or a.kwarg or f.decorator_list:
        yield where(f, f"{f.name}() takes plain arguments by position, with no defaults.")
    params = {arg.arg for arg in a.args}
    for name in sorted(params & RESERVED):
        yield where(f, f"call it something else: {name} is a word of JavaScript.")
    nodes = list(ast.walk(f))
    known = set(truths)
    known |= {arg.arg for arg in a.args if arg.annotation and ast.unparse(arg.annotation) == "bool"}
    for node in nodes:
        named = isinstance(node, ast.Assign) and isinstance(node.targets[0], ast.Name)
        if named and is_truth(node.value, known):
            known.add(node.targets[0].id)
    own = params | {n.id for n in stored(outside_comprehensions(f))}
    called = {id(n.func) for n in nodes if isinstance(n, ast.Call)}
    for node in nodes:
        if isinstance(node, ast.If | ast.While | ast.IfExp) and not is_truth(node.test, known):
            yield where(node, f"make the condition a comparison: `{ast.unparse(node.test)}`.")
        elif isinstance(node, ast.comprehension):
            for test in node.ifs:
                if not is_truth(test, known):
                    yield where(test, f"make the condition a comparison: `{ast.unparse(test)}`.")
            for name in stored(ast.walk(node.target)):
                if name.id in own:
                    yield where(name, f"{name.id} would leak out of this comprehension: rename it.")
        elif isinstance(node, ast.BoolOp) and not is_truth(node, known):
            yield where(node, "use and/or between comparisons only.")
        elif isinstance(node, ast.Attribute) and id(node) not in called:
            yield where(node, f"write {INSTEAD['Attribute']} instead of .{node.attr}.")


def refusals(source: str, elsewhere: set[str], truths: set[str], deep: int = 1) -> list[str]:
    """Sentences about what may not stand in this core module; [] when all is well.

    elsewhere: functions of the other core modules. truths: those that return bool. deep: how many
    folders up the core ends.
    """
    tree = ast.parse(source)
    known = elsewhere | {f.name for f in functions_of(tree)}
    truths = truths | truth_functions(tree)
    out = []
    skip: set[int] = set()
    for node in ast.walk(tree):  # annotations never reach JavaScript
        for field in ("annotation", "returns"):
            if getattr(node, field, None) is not None:
                skip |= {id(n) for n in ast.walk(getattr(node, field))}
        if isinstance(node, ast.AnnAssign) and node.value is None:
            out.append(where(node, "give it a value at once."))
    for node in ast.walk(tree):
        if id(node) not in skip:
            out += check_node(node, known, deep)
    for f in functions_of(tree):
        out += check_function(f, truths)
    return out


def type_refusals(source: str) -> list[str]:
    """Sentences about what may not stand in a module of types; [] when all is well.

    Such a module does nothing and never reaches the phone: it names aliases and TypedDicts.
    """
    out = []
    for node in ast.parse(source).body:
        if isinstance(node, ast.ImportFrom):
            if node.level != 1 and node.module not in OF_ANNOTATIONS:
                out.append(where(node, "import from typing and from other types only."))
        elif isinstance(node, ast.ClassDef):
            told = [n for n in node.body if not isinstance(n, ast.AnnAssign) or n.value]
            if len(told) > 1 or ast.get_docstring(node) is None:
                out.append(where(node, f"{node.name} has a docstring and fields, and no more."))
        elif isinstance(node, ast.Assign):
            called = [n for n in ast.walk(node) if isinstance(n, ast.Call)]
            if any(ast.unparse(call.func) not in {"TypedDict", "TypeVar"} for call in called):
                out.append(where(node, "an alias is worked out of types only."))
        elif not (isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)):
            out.append(where(node, "nothing but types stands here: what is done goes elsewhere."))
    return out
