"""Programs without whole numbers: bounds, prices and floors, by HiGHS directly.

PuLP builds a program piece by piece, which takes longer than solving its linear relaxation; here it is handed over
whole, and solved again from where it stood.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import accumulate
from typing import Any, Literal

from budgetfix.optimize.solver import Program, Row, Terms, Variable, holds, quiet

NOTHING = 1e-9
"""A price below it is rounding."""
SAFE, SAFE_SHARE = 1e-3, 1e-8
"""How much further than a bound asks for a price must reach, by itself and as a share of the bound."""
BLUR = 1e-12
"""Of all that a bound is added up from, what rounding may have cost."""


@dataclass(frozen=True, slots=True)
class Relaxed:
    """What a program is worth when nothing need be whole.

    No solution has an objective below `bound`; none that moves a variable by one from the end where it is cheaper
    has an objective below `bound` + |`prices[variable]`|.
    """

    bound: float
    prices: Mapping[str, float]
    values: Mapping[str, float]
    size: float = 0.0
    """All that the bound is added up from, without signs."""

    def dearer(self, name: str, most: int) -> Literal["up", "down"] | None:
        """The way a whole variable cannot go in any solution with an objective of at most `most`."""
        margin = most - self.bound + SAFE + SAFE_SHARE * abs(self.bound) + BLUR * self.size
        price = self.prices.get(name, 0.0)
        return "up" if price > margin else "down" if -price > margin else None


def relaxed(program: Program, objective: Terms, seconds: float) -> Relaxed | None:
    """The linear relaxation by HiGHS; None where it has no solution or the clock stopped it.

    The bound is put together again from the rows' prices alone, so that it holds however well the solver did.
    """
    if seconds <= 0:
        return None
    with quiet():
        return _relaxed(program, objective, seconds)


def relaxed_with(program: Program, objective: Terms, names: Iterable[str], seconds: float) -> dict[str, float]:
    """A floor of the objective for each of some variables at 1: one linear program, solved again from where it stood.

    Infinite: no solution has it at 1. What the clock did not reach is left out.
    """
    wanted = [name for name in names if name in program.variables]
    if seconds <= 0 or not wanted:
        return {}
    with quiet():
        return _relaxed_with(program, objective, wanted, seconds)


def _relaxed_with(program: Program, objective: Terms, wanted: Sequence[str], seconds: float) -> dict[str, float]:
    model = _loaded(program, objective, seconds)
    if model is None:
        return {}
    found = {}
    for name in wanted:
        one, index = program.variables[name], model.place.get(name)
        if index is None or one.up == 0:
            found[name] = math.inf
            continue
        model.highs.changeColBounds(index, 1, 1)
        model.highs.run()
        status = model.highs.getModelStatus().name
        if status == "kTimeLimit":
            break
        value = model.highs.getInfo().objective_function_value
        found[name] = value - SAFE - SAFE_SHARE * abs(value) if status == "kOptimal" else math.inf
        model.highs.changeColBounds(index, one.low, math.inf if one.up is None else one.up)
    return found


@dataclass(frozen=True, slots=True)
class _Loaded:
    """A linear program in HiGHS's hands, with the places of its columns and the rows that went into it."""

    highs: Any
    place: Mapping[str, int]
    costs: Sequence[float]
    rows: Sequence[tuple[Row, dict[int, int]]]


def _loaded(program: Program, objective: Terms, seconds: float) -> _Loaded | None:
    """The program without whole numbers; None where a row without columns does not hold."""
    names = [name for name, one in program.variables.items() if one.up != 0 or one.low != 0]
    place = {name: index for index, name in enumerate(names)}
    costs = [0.0] * len(names)
    for coefficient, name in objective:
        if name in place:
            costs[place[name]] += coefficient
    rows = [(row, summed) for row in program.rows if (summed := _summed(row.terms, place)) or not holds(row)]
    if not all(summed for _, summed in rows):
        return None
    model = _linear([program.variables[name] for name in names], costs, rows, seconds)
    return _Loaded(model, place, costs, rows)


def _relaxed(program: Program, objective: Terms, seconds: float) -> Relaxed | None:
    model = _loaded(program, objective, seconds)
    if model is None:
        return None
    model.highs.run()
    if model.highs.getModelStatus().name != "kOptimal":
        return None
    solution = model.highs.getSolution()
    costs, bound = list(model.costs), 0.0
    size = sum(map(abs, costs))
    for (row, summed), dual in zip(model.rows, solution.row_dual, strict=True):
        price = min(0.0, dual) if row.sense == "<=" else max(0.0, dual) if row.sense == ">=" else dual
        if price:
            bound += price * row.right
            size += abs(price) * (abs(row.right) + sum(map(abs, summed.values())))
            for index, coefficient in summed.items():
                costs[index] -= price * coefficient
    for name, price in zip(model.place, costs, strict=True):
        end = program.variables[name].low if price >= 0 else program.variables[name].up
        bound += 0.0 if abs(price) < NOTHING else -math.inf if end is None else price * end
    prices = dict(zip(model.place, costs, strict=True))
    return Relaxed(bound, prices, dict(zip(model.place, solution.col_value, strict=True)), size)


def _summed(terms: Terms, place: Mapping[str, int]) -> dict[int, int]:
    """Coefficients by column; columns that are left out are nothing."""
    once = {place[name]: coefficient for coefficient, name in terms if name in place}
    if len(once) == len(terms):
        return once
    sums = dict.fromkeys(once, 0)
    for coefficient, name in terms:
        if name in place:
            sums[place[name]] += coefficient
    return sums


def _linear(
    columns: Sequence[Variable], costs: Sequence[float], rows: Sequence[tuple[Row, dict[int, int]]], seconds: float
) -> Any:
    """A linear program handed to HiGHS whole: building it piece by piece costs more than solving it."""
    import highspy
    import numpy as np

    endless = highspy.kHighsInf
    lp = highspy.HighsLp()
    lp.num_col_, lp.num_row_ = len(columns), len(rows)
    lp.col_cost_ = np.array(costs, dtype=np.double)
    lp.col_lower_ = np.array([one.low for one in columns], dtype=np.double)
    lp.col_upper_ = np.array([endless if one.up is None else one.up for one in columns], dtype=np.double)
    lp.row_lower_ = np.array([-endless if row.sense == "<=" else row.right for row, _ in rows], dtype=np.double)
    lp.row_upper_ = np.array([endless if row.sense == ">=" else row.right for row, _ in rows], dtype=np.double)
    lp.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    lp.a_matrix_.start_ = np.array([0, *accumulate(len(summed) for _, summed in rows)], dtype=np.int32)
    lp.a_matrix_.index_ = np.array([index for _, summed in rows for index in summed], dtype=np.int32)
    lp.a_matrix_.value_ = np.array([value for _, summed in rows for value in summed.values()], dtype=np.double)
    model: Any = highspy.Highs()  # type: ignore[no-untyped-call]
    for option, value in (("output_flag", False), ("threads", 1), ("time_limit", seconds)):
        model.setOptionValue(option, value)
    model.passModel(lp)
    return model
