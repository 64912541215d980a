"""The integer program: which options, in which sessions, proven. It knows no furniture.

`solve` is the door. Importing this package loads no solver; the first solve does.
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from budgetfix.optimize.answering import solve
    from budgetfix.optimize.cannot import impossible
    from budgetfix.optimize.growth import GrownTree, Growth, value
    from budgetfix.optimize.recount import SolverDisagrees

_HOMES = {
    "Growth": "growth",
    "GrownTree": "growth",
    "SolverDisagrees": "recount",
    "impossible": "cannot",
    "solve": "answering",
    "value": "growth",
}

__all__ = ["GrownTree", "Growth", "SolverDisagrees", "impossible", "solve", "value"]


def __getattr__(name: str) -> object:
    """Fetch a public name from its home when it is first asked for."""
    if name not in _HOMES:
        raise AttributeError(name)
    return getattr(import_module(f"{__name__}.{_HOMES[name]}"), name)
