"""House style that a reviewer should not have to remember: sizes, excepts, copies, order, money without floats."""

from __future__ import annotations

import ast
import re
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from tests.laws.source import REPO, Source, plant, sources

COUNTED = re.compile(r"minor|price|cost|pack|on_hand|tax|minutes|points|uses|rate")
LINES, FUNCTION_LINES = 400, 60
MONEY = ("budgetfix.catalog", "budgetfix.optimize.recount", "budgetfix.base.money")
CHECKED = {"moved", "changed"}
UNORDERED = {"set", "frozenset"}


def everything(root: Path) -> tuple[Source, ...]:
    """The package and its tests."""
    return sources(root) + sources(root, "tests")


def long_files(root: Path) -> list[str]:
    """Files above 400 lines."""
    return [source.name for source in everything(root) if len(source.text.splitlines()) > LINES]


def long_functions(root: Path) -> list[str]:
    """Functions above 60 lines."""
    return [
        source.at(node, node.name)
        for source in everything(root)
        for node in ast.walk(source.tree)
        if isinstance(node, ast.FunctionDef) and (node.end_lineno or 0) - node.lineno + 1 > FUNCTION_LINES
    ]


def blanket_excepts(root: Path) -> list[str]:
    """Handlers that catch everything, alone or in a tuple, and `suppress` of everything."""
    found = []
    for source in everything(root):
        for node in ast.walk(source.tree):
            caught = [node.type] if isinstance(node, ast.ExceptHandler) else _suppressed(source, node)
            if any(one is None or _blanket(source, one) for one in caught):
                found.append(source.at(node, "catches everything"))
    return found


def _suppressed(source: Source, node: ast.AST) -> list[ast.expr]:
    named = isinstance(node, ast.Call) and source.dotted(node.func) == "contextlib.suppress"
    return list(node.args) if isinstance(node, ast.Call) and named else []


def _blanket(source: Source, caught: ast.expr) -> bool:
    parts = caught.elts if isinstance(caught, ast.Tuple) else [caught]
    return any(source.dotted(part).removeprefix("builtins.") in {"Exception", "BaseException"} for part in parts)


def unchecked_copies(root: Path) -> list[str]:
    """Uses of pydantic's ways round its checks, outside `moved` and `changed` (whose things `moved` has checked)."""
    return [
        source.at(node, "copies a record unchecked")
        for source in sources(root)
        for node in _unguarded(source.tree)
        if isinstance(node, ast.Attribute) and node.attr in {"model_copy", "model_construct"}
    ]


def _unguarded(node: ast.AST) -> Iterator[ast.AST]:
    yield node
    for child in ast.iter_child_nodes(node):
        if not (isinstance(child, ast.FunctionDef) and child.name in CHECKED):
            yield from _unguarded(child)


def floats_in_money(root: Path) -> list[str]:
    """Floats, typed, made or named, and Python's own `round`, where money and packs are counted."""
    return [
        source.at(node, "has a float or rounds")
        for source in sources(root)
        if source.name.startswith(MONEY)
        for node in _without_sizes(source.tree)
        if (isinstance(node, ast.Name) and node.id in {"float", "round"})
        or (isinstance(node, ast.Constant) and isinstance(node.value, float))
    ]


def _without_sizes(node: ast.AST) -> Iterator[ast.AST]:
    """All of a tree but fields for what a tape or a label says (widths, lumens), and questions of type."""
    yield node
    for child in ast.iter_child_nodes(node):
        field = child.target if isinstance(child, ast.AnnAssign) else None
        size = isinstance(field, ast.Name) and not COUNTED.search(field.id)
        asks = isinstance(child, ast.Call) and isinstance(child.func, ast.Name) and child.func.id == "isinstance"
        if not size and not asks:
            yield from _without_sizes(child)


def unordered(root: Path) -> list[str]:
    """Loops, lists, tuples and dicts built straight from a set: their order changes with the hash seed."""
    return [
        source.at(node, "takes a set in its own order")
        for source in sources(root)
        for node in ast.walk(source.tree)
        if any(_is_set(source, one) for one in _walked(source, node))
    ]


def _walked(source: Source, node: ast.AST) -> list[ast.expr]:
    if isinstance(node, ast.For):
        return [node.iter]
    if isinstance(node, ast.ListComp | ast.DictComp):
        return [part.iter for part in node.generators]
    if isinstance(node, ast.Call) and source.dotted(node.func) in {"list", "tuple", "enumerate"} and node.args:
        inner = node.args[0]
        return [part.iter for part in inner.generators] if isinstance(inner, ast.GeneratorExp) else [inner]
    return []


def _is_set(source: Source, node: ast.expr) -> bool:
    made = isinstance(node, ast.Call) and source.dotted(node.func) in UNORDERED
    return made or isinstance(node, ast.Set | ast.SetComp)


LAWS = (long_files, long_functions, blanket_excepts, unchecked_copies, floats_in_money, unordered)


@pytest.mark.parametrize("law", LAWS)
def test_the_style_is_kept(law: Callable[[Path], list[str]]) -> None:
    """Small files and functions, named exceptions, checked copies, exact money, one order."""
    assert law(REPO) == []


BODY = "def long():\n" + "    step()\n" * 60
TRY = "try:\n    step()\nexcept {}:\n    pass\n"
PLANTED = [
    (long_files, "room/planted.py", "x = 1\n" * 401),
    (long_functions, "room/planted.py", BODY),
    (blanket_excepts, "room/planted.py", TRY.format("Exc" + "eption")),
    (blanket_excepts, "room/planted.py", TRY.format("(ValueError, Base" + "Exception) as error")),
    (blanket_excepts, "room/planted.py", TRY.replace(" {}", "")),
    (
        blanket_excepts,
        "room/planted.py",
        "from contextlib import suppress\nwith suppress(Exc" + "eption):\n    step()\n",
    ),
    (unchecked_copies, "room/planted.py", "def other(wall):\n    return wall.model_copy(update={})\n"),
    (floats_in_money, "catalog/planted.py", "price = float('2.50')\n"),
    (floats_in_money, "optimize/recount.py", "packs = round(need / pack)\n"),
    (floats_in_money, "catalog/planted.py", "tax_minor = goods_minor * 0.0825\n"),
    (floats_in_money, "catalog/models.py", "class Product:\n    price_minor: float\n"),
    (floats_in_money, "base/money.py", "def tax(rate: float) -> int: ...\n"),
    (unordered, "room/planted.py", "for wall in {'a', 'b'}:\n    step()\n"),
    (unordered, "room/planted.py", "names = [one for one in set(walls)]\n"),
    (unordered, "room/planted.py", "names = tuple({wall.name for wall in walls})\n"),
]


@pytest.mark.parametrize(("law", "module", "text"), PLANTED)
def test_a_planted_breach_of_style_is_found(
    law: Callable[[Path], list[str]], module: str, text: str, tmp_path: Path
) -> None:
    """Each habit fails on one small breach."""
    assert len(law(plant(tmp_path, {f"budgetfix/{module}": text}))) == 1


def test_the_edge_of_each_habit_is_allowed(tmp_path: Path) -> None:
    """400 lines, 60-line functions, named errors, the one helper, exact ceilings and sorted sets pass."""
    root = plant(
        tmp_path,
        {
            "budgetfix/room/edge.py": "x = 1\n" * 400,
            "budgetfix/room/sixty.py": BODY.removesuffix("    step()\n"),
            "budgetfix/room/named.py": TRY.format("(ValueError, KeyError)"),
            "budgetfix/room/copied.py": "def moved(wall):\n    return wall.model_copy()\n",
            "budgetfix/catalog/packs.py": "import math\npacks = math.ceil(Fraction(need, pack))\n",
            "budgetfix/catalog/models.py": "class Product:\n    width: float | None\n",
            "budgetfix/base/money.py": "if isinstance(value, float):\n    text = repr(value)\n",
            "budgetfix/room/sorted.py": "for wall in sorted({'a', 'b'}):\n    step()\n",
        },
    )
    assert [law(root) for law in LAWS] == [[]] * len(LAWS)
