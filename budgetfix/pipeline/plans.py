"""The best plan, the two cheaper ones, and what more money would buy."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from fractions import Fraction

from budgetfix.framing.frame import Framed, Ground
from budgetfix.framing.options import ERRAND
from budgetfix.optimize import Growth, solve
from budgetfix.optimize.problem import Answer, Depth, Extra, NoPlan, Problem
from budgetfix.outcome.book import MorePlan, Sums
from budgetfix.outcome.check import checked
from budgetfix.outcome.make import before, hazards_left, sums

Clock = Callable[[], float]
GOOD_SHARE = Fraction(9, 10)
"""The recommended plan reaches this share of the best plan's improvement."""
MARKS = (Fraction(11, 10), Fraction(3, 2))
"""Raised budgets that the book shows."""
FEWER = 4
"""How many cheaper plans the book shows."""


@dataclass(frozen=True)
class Chooser:
    """One framed job with the growth of its trees, shared by every solve."""

    base: Ground
    framed: Framed
    clock: Clock
    report: Callable[[str], None] | None
    growth: Growth

    def best(
        self, seconds: float, extra: Extra | None = None, problem: Problem | None = None, depth: Depth = "all"
    ) -> Answer | NoPlan:
        """One solve."""
        return solve(
            problem or self.framed.problem,
            seconds=seconds,
            extra=extra or Extra(),
            clock=self.clock,
            report=self.report,
            growth=self.growth,
            depth=depth,
        )

    def in_figures(self, answer: Answer, budget_minor: int | None = None) -> Sums:
        """A plan checked and summed up; `budget_minor` when it was planned on another budget."""
        problem = self.framed.problem
        if budget_minor is not None:
            problem = replace(problem, budget_minor=budget_minor)
        found = checked(self.base, replace(self.framed, problem=problem), answer.plan)
        return sums(answer.plan, self.base.brief.fixed_minor, before(self.base)[2], hazards_left(self.base, found))


def recommended(chooser: Chooser, best: Answer, seconds: float) -> Sums | None:
    """The least spend with the best plan's hazards gone and at least 90 % of its improvement."""
    points = before(chooser.base)[2]
    gained = points - best.plan.points
    least = -(-gained * GOOD_SHARE.numerator // GOOD_SHARE.denominator) if gained > 0 else gained
    extra = Extra(hazards_at_most=best.plan.hazards, points_at_most=points - least, spend_first=True)
    found = chooser.best(seconds, extra, depth="set")
    return chooser.in_figures(found) if isinstance(found, Answer) and found.proven else None


def free(chooser: Chooser, seconds: float) -> Sums | None:
    """The best plan with nothing spent; None where the musts cost money."""
    found = chooser.best(seconds, Extra(spend_at_most=0), depth="set")
    return chooser.in_figures(found) if isinstance(found, Answer) and found.proven else None


def more_plans(chooser: Chooser, best: Answer, until: float) -> tuple[MorePlan, ...]:
    """Best plans for other sums of money, cheapest first, this one among them; as many as the clock allows."""
    found = {best.plan.spent_minor: best}
    _cheaper(chooser, best, until, found)
    _dearer(chooser, best, until, found)
    points = before(chooser.base)[2]
    names = {id: one.name for id, one in chooser.framed.candidates.items()}
    mine = set(best.plan.chosen)
    rows = []
    for spent in sorted(found):
        answer = found[spent]
        theirs = {id for id in answer.plan.chosen if not id.startswith(ERRAND)}
        mine_only = {id for id in mine if not id.startswith(ERRAND)}
        rows.append(
            MorePlan(
                spent + chooser.base.brief.fixed_minor,
                points - answer.plan.points,
                chooser.in_figures(answer, max(spent, chooser.framed.problem.budget_minor or 0)).hazards_after,
                answer.plan.person_minutes,
                tuple(names[id] for id in sorted(theirs - mine_only)),
                tuple(names[id] for id in sorted(mine_only - theirs)),
                answer is best,
            )
        )
    return tuple(rows)


def _cheaper(chooser: Chooser, best: Answer, until: float, found: dict[int, Answer]) -> None:
    top = best.plan.spent_minor
    for index in range(FEWER):
        ceiling = top * index // FEWER
        left = until - chooser.clock()
        if left <= 0 or top == 0:
            return
        answer = chooser.best(left, Extra(spend_at_most=ceiling))
        if isinstance(answer, Answer) and answer.proven:
            found.setdefault(answer.plan.spent_minor, answer)


def _dearer(chooser: Chooser, best: Answer, until: float, found: dict[int, Answer]) -> None:
    budget = chooser.framed.problem.budget_minor
    if budget is None:
        return
    for mark in MARKS:
        left = until - chooser.clock()
        if left <= 0:
            return
        raised = replace(chooser.framed.problem, budget_minor=int(budget * mark))
        answer = chooser.best(left, problem=raised)
        better = isinstance(answer, Answer) and (answer.plan.hazards, answer.plan.points) < (
            best.plan.hazards,
            best.plan.points,
        )
        if isinstance(answer, Answer) and answer.proven and better:
            found.setdefault(answer.plan.spent_minor, answer)
