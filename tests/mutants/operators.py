"""Every small change that could be made to a source: a boundary moved, a sign turned, a line left out.

Left alone: words (strings and what formats them), annotations, docstrings, `assert`, `__all__` and imports.
"""

from __future__ import annotations

import ast
import copy
import dataclasses
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from types import UnionType
from typing import Any

Place = tuple[tuple[str, int | None], ...]
"""The way from the root of the tree to a node: fields, and indices where a field is a list."""

COMPARISONS: dict[type[ast.cmpop], tuple[type[ast.cmpop], ...]] = {
    ast.Lt: (ast.LtE, ast.GtE),
    ast.LtE: (ast.Lt, ast.Gt),
    ast.Gt: (ast.GtE, ast.LtE),
    ast.GtE: (ast.Gt, ast.Lt),
    ast.Eq: (ast.NotEq,),
    ast.NotEq: (ast.Eq,),
    ast.In: (ast.NotIn,),
    ast.NotIn: (ast.In,),
    ast.Is: (ast.IsNot,),
    ast.IsNot: (ast.Is,),
}
ARITHMETIC: dict[type[ast.operator], type[ast.operator]] = {
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Div,
    ast.Div: ast.Mult,
    ast.FloorDiv: ast.Div,
    ast.Mod: ast.FloorDiv,
    ast.Pow: ast.Mult,
    ast.BitOr: ast.BitAnd,
    ast.BitAnd: ast.BitOr,
}
TWINS = {"min": "max", "max": "min", "any": "all", "all": "any", "floor": "ceil", "ceil": "floor"}
UNTOUCHED = ("annotation", "returns", "decorator_list", "format_spec", "type_comment", "bases")


@dataclass(frozen=True)
class Mutant:
    """One change. `line` counts from 1; `text` is that line without indent; `new` stands at `place` in the tree.

    `function`: the outermost function or method around it, by its qualified name; empty where the module runs it.
    `lines`: the first and last line of the statement that it is in (of its head, where it holds others).
    """

    module: str
    line: int
    lines: tuple[int, int]
    text: str
    change: str
    place: Place
    new: ast.AST = dataclasses.field(compare=False)
    function: str

    @property
    def told(self) -> str:
        """What is needed to see it again."""
        return f"{self.module}:{self.line}  {self.text}  [{self.change}]"


def mutants(module: str, source: str) -> tuple[Mutant, ...]:
    """Every mutant of a source, in the order of its lines. `module`: its path from the root of the project."""
    written = source.splitlines()
    found = []
    for spot in _spots(ast.parse(source), _Spot((), ast.Module([], []), (), False, (1, 1))):
        line: int = getattr(spot.node, "lineno", 0) or spot.lines[0]
        for new in _changed(spot.node):
            change, text = f"{_words(spot.node)} -> {_words(new)}", written[line - 1].strip()
            function = ".".join(spot.names) if spot.in_function else ""
            found.append(Mutant(module, line, spot.lines, text, change, spot.place, new, function))
    return tuple(sorted(found, key=lambda one: one.line))


def mutated(source: str, mutant: Mutant) -> ast.Module:
    """The tree of the source with this one change in it."""
    tree = ast.parse(source)
    node: ast.AST = tree
    for field, index in mutant.place[:-1]:
        node = getattr(node, field) if index is None else getattr(node, field)[index]
    field, index = mutant.place[-1]
    if index is None:
        setattr(node, field, mutant.new)
    else:
        getattr(node, field)[index] = mutant.new
    return ast.fix_missing_locations(tree)


def _words(node: ast.AST) -> str:
    if isinstance(node, ast.If | ast.While):
        return f"if {ast.unparse(node.test)}"
    if isinstance(node, ast.comprehension):
        return f"for {ast.unparse(node.target)} in {ast.unparse(node.iter)}" + "".join(
            f" if {ast.unparse(one)}" for one in node.ifs
        )
    return ast.unparse(node)


@dataclass(frozen=True)
class _Spot:
    place: Place
    node: ast.AST
    names: tuple[str, ...]
    in_function: bool
    lines: tuple[int, int]


def _spots(root: ast.AST, at: _Spot) -> Iterator[_Spot]:
    for field, value in ast.iter_fields(root):
        if field in UNTOUCHED:
            continue
        several = value if isinstance(value, list) else [value]
        for index, child in enumerate(several):
            if isinstance(child, ast.AST) and not _left_alone(child):
                where = (*at.place, (field, index if isinstance(value, list) else None))
                spot = _inside(root, field, at, where, child)
                yield spot
                yield from _spots(child, spot)


def _inside(root: ast.AST, field: str, at: _Spot, place: Place, child: ast.AST) -> _Spot:
    names, in_function = at.names, at.in_function
    if isinstance(root, ast.ClassDef | ast.FunctionDef) and field == "body" and not in_function:
        names, in_function = (*names, root.name), isinstance(root, ast.FunctionDef)
    return _Spot(place, child, names, in_function, _lines(child) if isinstance(child, ast.stmt) else at.lines)


def _lines(statement: ast.stmt) -> tuple[int, int]:
    body = getattr(statement, "body", None)
    last = max(statement.lineno, body[0].lineno - 1) if isinstance(body, list) and body else statement.end_lineno
    return statement.lineno, last or statement.lineno


def _left_alone(node: ast.AST) -> bool:
    if isinstance(node, ast.Assign) and isinstance(node.targets[0], ast.Name) and node.targets[0].id == "__all__":
        return True
    if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
        return True
    return isinstance(node, ast.Import | ast.ImportFrom | ast.Assert)


def _changed(node: ast.AST) -> Iterator[ast.AST]:
    for sort, change in CHANGES:
        if isinstance(node, sort):
            yield from change(copy.deepcopy(node))


def _comparison(node: ast.Compare) -> Iterator[ast.AST]:
    for at, sign in enumerate(node.ops):
        for other in COMPARISONS[type(sign)]:
            yield ast.Compare(node.left, [*node.ops[:at], other(), *node.ops[at + 1 :]], node.comparators)


def _arithmetic(node: ast.BinOp) -> Iterator[ast.AST]:
    if type(node.op) in ARITHMETIC and not _word(node.left) and not _word(node.right):
        yield ast.BinOp(node.left, ARITHMETIC[type(node.op)](), node.right)


def _word(node: ast.AST) -> bool:
    return isinstance(node, ast.JoinedStr) or (isinstance(node, ast.Constant) and isinstance(node.value, str))


def _step(node: ast.AugAssign) -> Iterator[ast.AST]:
    if type(node.op) in ARITHMETIC:
        yield ast.AugAssign(node.target, ARITHMETIC[type(node.op)](), node.value)
    yield ast.Pass()


def _both(node: ast.BoolOp) -> Iterator[ast.AST]:
    yield ast.BoolOp(ast.Or() if isinstance(node.op, ast.And) else ast.And(), node.values)
    for at in range(len(node.values)):
        left = [*node.values[:at], *node.values[at + 1 :]]
        yield left[0] if len(left) == 1 else ast.BoolOp(node.op, left)


def _sign(node: ast.UnaryOp) -> Iterator[ast.AST]:
    if isinstance(node.op, ast.Not | ast.USub):
        yield node.operand


def _number(node: ast.Constant) -> Iterator[ast.AST]:
    if isinstance(node.value, bool):
        yield ast.Constant(not node.value)
    elif isinstance(node.value, int):
        yield from (ast.Constant(node.value + 1), ast.Constant(node.value - 1))
    elif isinstance(node.value, float):
        yield ast.Constant(node.value + 1.0)


def _given_back(node: ast.Return) -> Iterator[ast.AST]:
    if node.value is not None and not (isinstance(node.value, ast.Constant) and node.value.value is None):
        yield ast.Return(ast.Constant(None))


def _gone(_: ast.stmt) -> Iterator[ast.AST]:
    yield ast.Pass()


def _stored(node: ast.Assign) -> Iterator[ast.AST]:
    if isinstance(node.targets[0], ast.Subscript | ast.Attribute):
        yield ast.Pass()


def _called(node: ast.Expr) -> Iterator[ast.AST]:
    if isinstance(node.value, ast.Call):
        yield ast.Pass()


def _asked(node: ast.If | ast.While | ast.IfExp) -> Iterator[ast.AST]:
    if not isinstance(node.test, ast.Compare | ast.UnaryOp | ast.BoolOp):
        node.test = ast.UnaryOp(ast.Not(), node.test)
        yield node


def _unfiltered(node: ast.comprehension) -> Iterator[ast.AST]:
    for at in range(len(node.ifs)):
        yield ast.comprehension(node.target, node.iter, [*node.ifs[:at], *node.ifs[at + 1 :]], node.is_async)


def _twin(node: ast.Call) -> Iterator[ast.AST]:
    if isinstance(node.func, ast.Name) and node.func.id in TWINS:
        yield ast.Call(ast.Name(TWINS[node.func.id], ast.Load()), node.args, node.keywords)
    if isinstance(node.func, ast.Attribute) and node.func.attr in TWINS and not node.keywords:
        yield ast.Call(ast.Attribute(node.func.value, TWINS[node.func.attr], ast.Load()), node.args, [])


def _cut(node: ast.Slice) -> Iterator[ast.AST]:
    if node.lower is not None:
        yield ast.Slice(None, node.upper, node.step)
    if node.upper is not None:
        yield ast.Slice(node.lower, None, node.step)


CHANGES: tuple[tuple[type[ast.AST] | UnionType, Callable[[Any], Iterator[ast.AST]]], ...] = (
    (ast.Compare, _comparison),
    (ast.BinOp, _arithmetic),
    (ast.AugAssign, _step),
    (ast.BoolOp, _both),
    (ast.UnaryOp, _sign),
    (ast.Constant, _number),
    (ast.Return, _given_back),
    (ast.Continue, _gone),
    (ast.Break, _gone),
    (ast.Raise, _gone),
    (ast.Assign, _stored),
    (ast.Expr, _called),
    (ast.If, _asked),
    (ast.While, _asked),
    (ast.IfExp, _asked),
    (ast.comprehension, _unfiltered),
    (ast.Call, _twin),
    (ast.Slice, _cut),
)
