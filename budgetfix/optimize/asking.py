"""One problem asked again and again, with the same growth and the plans found so far."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field

from budgetfix.optimize.answering import solve
from budgetfix.optimize.growth import Growth
from budgetfix.optimize.problem import Answer, Depth, Extra, NoPlan, Plan, Problem, Report
from budgetfix.optimize.solver import Engine

STARTS = 2
"""Plans found before that a solve starts from, at most."""


@dataclass
class Asking:
    """Answers that are proven; nothing is asked any more from `until` on."""

    problem: Problem
    growth: Growth
    clock: Callable[[], float]
    until: float
    report: Report | None = None
    engine: Engine = "highs"
    seen: list[Plan] = field(default_factory=list)
    """Plans to start from where they fit."""
    depth: Depth = "figures"
    solves: int = 0

    def left(self) -> float:
        """Seconds left."""
        return self.until - self.clock()

    def ask(self, extra: Extra) -> Plan | NoPlan | None:
        """The proven best; None when the clock stopped it."""
        if self.left() <= 0:
            return None
        self.solves += 1
        answer = solve(
            self.problem,
            seconds=self.left(),
            extra=extra,
            clock=self.clock,
            growth=self.growth,
            engine=self.engine,
            depth=self.depth,
            known=self._near(extra),
        )
        if not answer.proven:
            return None
        if isinstance(answer, Answer):
            self.seen.append(answer.plan)
            return answer.plan
        return answer

    def least(self, extras: Iterable[Extra]) -> Plan | NoPlan | None:
        """The cheapest of the answers to several questions; None when the clock stopped one of them."""
        found = [self.ask(extra) for extra in extras]
        if None in found:
            return None
        plans = [one for one in found if isinstance(one, Plan)]
        return min(plans, key=lambda one: (one.spent_minor, one.hazards, one.points), default=NoPlan())

    def _near(self, extra: Extra) -> list[Plan]:
        """Plans that fit what is asked and do most."""
        most = extra.spend_at_most
        fitting = [
            plan
            for plan in self.seen
            if (most is None or plan.spent_minor <= most)
            and set(extra.chosen) <= set(plan.chosen)
            and _few(plan, extra)
        ]
        return sorted(fitting, key=lambda plan: (plan.hazards, plan.points, plan.spent_minor))[:STARTS]


def _few(plan: Plan, extra: Extra) -> bool:
    """True where a plan buys no more packs than is asked for."""
    packs = dict(plan.packs)
    return all(packs.get(id, 0) <= most for id, most in extra.packs_at_most)


def doing(problem: Problem, plan: Plan, *, more: int, chosen: tuple[str, ...] = ()) -> tuple[Extra, ...]:
    """What asks for the least spend that takes away at least so many points more than a plan does; or is safer.

    `more` 0: at least as good. Several questions, of which the cheapest answer counts (see `Asking.least`).
    """
    if not problem.hazards_first:
        both = plan.hazards + plan.points - more
        return (Extra(both_at_most=both, chosen=chosen, spend_first=True),) if both >= 0 else ()
    points = Extra(hazards_at_most=plan.hazards, points_at_most=plan.points - more, chosen=chosen, spend_first=True)
    safer = Extra(hazards_at_most=plan.hazards - 1, chosen=chosen, spend_first=True)
    return tuple(one for one, able in ((points, plan.points >= more), (safer, plan.hazards > 0)) if able)
