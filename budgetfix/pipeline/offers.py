"""The cheaper options of a quote, each by a solve of its own, so that no clock decides what the client is offered."""

from __future__ import annotations

from budgetfix.optimize.problem import Answer
from budgetfix.outcome.book import Stop
from budgetfix.outcome.quoting import SHARES
from budgetfix.pipeline.plans import Chooser, nearly_as_good
from budgetfix.pipeline.stops import stop_of


def offers(chooser: Chooser, best: Answer, seconds: float) -> tuple[tuple[str, Stop], ...]:
    """(name, plan) of each, as far as proven in the time; nothing where everything is asked for."""
    if chooser.framed.problem.must_all or not best.proven:
        return ()
    until = chooser.clock() + seconds

    def left() -> float:
        return max(0.0, until - chooser.clock())

    found = []
    for name, share in SHARES:
        plan = nearly_as_good(chooser, best, share, left())
        if plan is not None and plan.chosen != best.plan.chosen:
            found.append((name, stop_of(chooser, plan, left)))
    return tuple(found)
