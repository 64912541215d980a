"""Put one mutant in place, in a process that is thrown away afterwards.

Two ways. A change within a function: its code is swapped in the living function, whoever has imported it. A change in
what the module itself runs (a constant, a default): the module's source is swapped before anybody imports it.
"""

from __future__ import annotations

import ast
import functools
import gc
import importlib.abc
import importlib.machinery
import importlib.util
import sys
from pathlib import Path
from types import CodeType, FunctionType, ModuleType

from tests.mutants.operators import Mutant, mutated

ROOT = Path(__file__).parents[2]


def dotted(module: str) -> str:
    """`budgetfix/room/zones.py` as `budgetfix.room.zones`."""
    return module.removesuffix(".py").replace("/", ".")


def living(module: str) -> dict[str, list[FunctionType]]:
    """The functions of an imported module by their qualified names, those that decorators wrap as well."""
    home = str(ROOT / module)
    found: dict[str, list[FunctionType]] = {}
    for one in gc.get_objects():
        if isinstance(one, FunctionType) and one.__code__.co_filename == home:
            found.setdefault(one.__code__.co_qualname, []).append(one)
    return found


def forget() -> None:
    """Empty every cache of budgetfix: what was worked out before the swap must not answer after it."""
    for one in gc.get_objects():
        if isinstance(one, functools._lru_cache_wrapper) and one.__module__.startswith("budgetfix."):
            one.cache_clear()


def swap(mutant: Mutant, source: str, functions: dict[str, list[FunctionType]]) -> bool:
    """Give the living functions the mutant's code. False where there is none of that name, or its closure differs."""
    home = str(ROOT / mutant.module)
    made = _code_of(compile(mutated(source, mutant), home, "exec"), mutant.function)
    alive = functions.get(mutant.function, [])
    if made is None or not alive or any(one.__code__.co_freevars != made.co_freevars for one in alive):
        return False
    for one in alive:
        one.__code__ = made
    return True


def _code_of(code: CodeType, name: str) -> CodeType | None:
    if code.co_qualname == name and code.co_name != "<module>":
        return code
    inner = (one for one in code.co_consts if isinstance(one, CodeType))
    return next((found for one in inner if (found := _code_of(one, name)) is not None), None)


class _Source(importlib.abc.Loader):
    def __init__(self, tree: ast.Module, home: str) -> None:
        self.tree, self.home = tree, home

    def exec_module(self, module: ModuleType) -> None:
        exec(compile(self.tree, self.home, "exec"), module.__dict__)


class Instead(importlib.abc.MetaPathFinder):
    """Finds the mutant where the module is asked for. It must be asked before all other finders."""

    def __init__(self, mutant: Mutant, source: str) -> None:
        self.mutant, self.source = mutant, source

    def find_spec(self, name: str, *_: object) -> importlib.machinery.ModuleSpec | None:
        """The mutated module's spec; None for all others."""
        if name != dotted(self.mutant.module):
            return None
        home = str(ROOT / self.mutant.module)
        loader = _Source(mutated(self.source, self.mutant), home)
        spec = importlib.util.spec_from_loader(name, loader, origin=home)
        if spec is not None:
            spec.has_location = True
        return spec


def instead(mutant: Mutant, source: str) -> None:
    """From now on, importing the mutant's module gives the mutant. It must not be imported yet."""
    if dotted(mutant.module) in sys.modules:
        raise RuntimeError(f"{mutant.module} is imported already")
    sys.meta_path.insert(0, Instead(mutant, source))
