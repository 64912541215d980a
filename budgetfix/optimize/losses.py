"""Why an option is not in the fair plan of two people: what either would lose by it while the other keeps all."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace

from budgetfix.optimize.asking import Asking
from budgetfix.optimize.cannot import impossible
from budgetfix.optimize.growth import Growth
from budgetfix.optimize.problem import Extra, Plan, Problem, Report, Round
from budgetfix.optimize.solver import Engine


@dataclass(frozen=True, slots=True)
class Loss:
    """What holding one option comes to, in plans that are as safe.

    `least`: for each person the fewest points that he or she would lose while the other loses none; None: no plan holds
    the option without a loss for the other. `nothing`: no plan within the money, the hours and the limits holds it.
    """

    id: str
    least: tuple[int | None, int | None] = (None, None)
    nothing: bool = False


def losses(
    problem: Problem,
    fair: Plan,
    ids: Iterable[str],
    *,
    seconds: float,
    clock: Callable[[], float],
    growth: Growth | None = None,
    report: Report | None = None,
    engine: Engine = "highs",
) -> dict[str, Loss]:
    """An answer for each option not in the fair plan and not impossible, in this order, as far as the clock allows."""
    asking = Asking(problem, growth or Growth(problem), clock, clock() + seconds, None, engine, depth="worth")
    cannot = impossible(problem)
    asked = [id for id in dict.fromkeys(ids) if id not in fair.chosen and id not in cannot]
    found: dict[str, Loss] = {}
    for number, id in enumerate(asked):
        if report is not None:
            report(Round("why_not", number, len(asked)))
        loss = _loss(asking, fair, id)
        if loss is None:
            break
        found[id] = loss
    return found


def _loss(asking: Asking, fair: Plan, id: str) -> Loss | None:
    """None when the clock stopped it."""
    safe = fair.hazards if asking.problem.hazards_first else None
    least: list[int | None] = []
    for voice, other in ((0, 1), (1, 0)):
        kept = tuple(fair.voices[other] if one == other else None for one in (0, 1))
        plan = asking.ask(Extra(chosen=(id,), hazards_at_most=safe, voices=(voice, other), voices_at_most=kept))
        if plan is None:
            return None
        least.append(plan.voices[voice] - fair.voices[voice] if isinstance(plan, Plan) else None)
    if least != [None, None]:
        return Loss(id, (least[0], least[1]))
    anything = asking.ask(Extra(chosen=(id,)))
    return None if anything is None else replace(Loss(id), nothing=not isinstance(anything, Plan))
