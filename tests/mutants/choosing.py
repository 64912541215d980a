"""Which tests judge a mutant: those that run its line, quick ones and those of the module's own test file first."""

from __future__ import annotations

import ast
import random
import re
from collections.abc import Iterable
from functools import lru_cache
from pathlib import Path

from tests.mutants.judging import Case
from tests.mutants.operators import Mutant, mutants
from tests.mutants.touched import ROOT, Touched

QUICK_SECONDS = 1.0
PACKAGE = ROOT / "budgetfix"


def sampled(module: str, share: float, seed: int, functions: tuple[str, ...] = ()) -> tuple[tuple[Mutant, ...], int]:
    """A share of the mutants of a module, drawn by the seed and the module's name, and how many there are in all.

    `functions`: only those of these functions count; empty: all do.
    """
    found = mutants(module, (ROOT / module).read_text("utf-8"))
    every = tuple(one for one in found if not functions or one.function in functions)
    count = len(every) if share >= 1 else min(len(every), max(1, round(share * len(every))))
    drawn = sorted(random.Random(f"{seed}/{module}").sample(range(len(every)), count))
    return tuple(every[at] for at in drawn), len(every)


def case(mutant: Mutant, touched: Touched, most_seconds: float) -> Case:
    """The mutant with its tests: as many as take so many seconds together, at least one if there is any."""
    cold = not mutant.function or "" in touched.tests(mutant.module, *mutant.lines)
    tests = touched.tests(mutant.module, *mutant.lines) if mutant.function else _users(mutant, touched)
    own = own_tests(mutant.module)
    known = [test for test in tests if test in touched.seconds]
    chosen: list[str] = []
    left = most_seconds
    for test in sorted(known, key=lambda test: _rank(test, own, touched.seconds[test])):
        if touched.seconds[test] <= left or not chosen:
            chosen.append(test)
            left -= touched.seconds[test]
    return Case(mutant, tuple(chosen), most_seconds - left, cold)


def own_tests(module: str) -> str:
    """Where the tests of a module are, by the mirror: the beginning of their ids."""
    folder, name = module.removeprefix("budgetfix/").removesuffix(".py").rsplit("/", 1)
    return f"tests/{folder}/test_{name}"


def _rank(test: str, own: str, seconds: float) -> tuple[bool, bool, float, str]:
    return seconds > QUICK_SECONDS, not test.startswith(own), seconds, test


def _users(mutant: Mutant, touched: Touched) -> frozenset[str]:
    """Tests that run a line which names what the statement around a module-level mutant defines, or that name it."""
    found: set[str] = set()
    for name in _reach(mutant):
        for module, lines in _naming(name):
            for line in lines:
                found |= touched.tests(module, line, line)
        files = frozenset(path for path, text in _tests() if re.search(rf"\b{re.escape(name)}\b", text))
        found |= {test for test in touched.seconds if test.split("::")[0] in files}
    return frozenset(found)


def _reach(mutant: Mutant) -> frozenset[str]:
    """The names that the statement defines, and those of the same module that are made of them, and so on."""
    statements = ast.parse((ROOT / mutant.module).read_text("utf-8")).body
    around = next(one for one in statements if one.lineno <= mutant.line <= (one.end_lineno or one.lineno))
    found, before = _names(around, mutant.line), frozenset[str]()
    while found != before:
        before = found
        made = [one for one in statements if isinstance(one, ast.Assign | ast.AnnAssign | ast.FunctionDef)]
        found |= {name for one in made if _used_at_once(one) & found for name in _names(one, one.lineno)}
    return found


def _names(statement: ast.stmt, line: int) -> frozenset[str]:
    if isinstance(statement, ast.FunctionDef):
        return frozenset({statement.name})
    if isinstance(statement, ast.ClassDef):
        inner = [one for one in statement.body if one.lineno <= line <= (one.end_lineno or one.lineno)]
        return frozenset(name for one in inner for name in _names(one, line)) or frozenset({statement.name})
    stored = (one for one in ast.walk(statement) if isinstance(one, ast.Name) and isinstance(one.ctx, ast.Store))
    return frozenset(one.id for one in stored)


def _used_at_once(statement: ast.stmt) -> frozenset[str]:
    head: ast.AST = statement.args if isinstance(statement, ast.FunctionDef) else statement
    return frozenset(one.id for one in ast.walk(head) if isinstance(one, ast.Name) and isinstance(one.ctx, ast.Load))


@lru_cache(maxsize=4096)
def _naming(name: str) -> tuple[tuple[str, tuple[int, ...]], ...]:
    word = re.compile(rf"\b{re.escape(name)}\b")
    found = []
    for path, text in _sources():
        lines = tuple(at for at, line in enumerate(text.splitlines(), 1) if word.search(line))
        if lines:
            found.append((path, lines))
    return tuple(found)


@lru_cache(maxsize=1)
def _sources() -> tuple[tuple[str, str], ...]:
    return tuple(_read(sorted(PACKAGE.rglob("*.py"))))


@lru_cache(maxsize=1)
def _tests() -> tuple[tuple[str, str], ...]:
    return tuple(_read(sorted((ROOT / "tests").rglob("test_*.py"))))


def _read(paths: Iterable[Path]) -> Iterable[tuple[str, str]]:
    return ((str(path.relative_to(ROOT)), path.read_text("utf-8")) for path in paths)
