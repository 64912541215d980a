"""The best plan, the two cheaper ones, and what more money would buy."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from fractions import Fraction

from budgetfix.framing.frame import Framed, Ground
from budgetfix.framing.options import ERRAND
from budgetfix.framing.van import photographed_by
from budgetfix.optimize import Growth, solve
from budgetfix.optimize.curve import Curve, an_hour_longer, curve, longer_session, next_hour, next_point
from budgetfix.optimize.growth import remaining
from budgetfix.optimize.problem import Answer, Depth, Extra, NoPlan, Plan, Problem, Report
from budgetfix.outcome.book import MorePlan, NextStep, Sums
from budgetfix.outcome.check import Checked, checked
from budgetfix.outcome.make import before, hazards_left, sums

Clock = Callable[[], float]
GOOD_SHARE = Fraction(9, 10)
"""The recommended plan reaches this share of the best plan's improvement."""
EXACT_UP_TO = 60
"""Options up to which every sum of money is worked out while the clock allows; in larger jobs some marks."""
CURVE = 0.8
"""Share of the seconds for other sums of money that goes into the curve; the rest is for one point and one hour."""
MOST_SOLVES = 24
"""Solves for the marks of a larger job."""


@dataclass(frozen=True)
class Chooser:
    """One framed job with the growth of its trees, shared by every solve."""

    base: Ground
    framed: Framed
    clock: Clock
    report: Report | None
    growth: Growth

    def best(self, seconds: float, extra: Extra | None = None, depth: Depth = "all") -> Answer | NoPlan:
        """One solve."""
        return solve(
            self.framed.problem,
            seconds=seconds,
            extra=extra or Extra(),
            clock=self.clock,
            report=self.report,
            growth=self.growth,
            depth=depth,
        )

    def in_figures(self, plan: Plan, problem: Problem | None = None) -> Sums:
        """A plan checked and summed up; `problem`: where it answers another one than the job's."""
        found = checked(self.base, self.framed_for(plan, problem), plan)
        return self.summed(plan, found)

    def summed(self, plan: Plan, found: Checked) -> Sums:
        """A checked plan in figures."""
        return sums(plan, self.base.brief.fixed_minor, before(self.base)[2], hazards_left(self.base, found))

    def framed_for(self, plan: Plan, problem: Problem | None = None) -> Framed:
        """The framing with a budget that is no smaller than what the plan spends."""
        return replace(self.framed, problem=with_money_for(problem or self.framed.problem, plan))


def recommended(chooser: Chooser, best: Answer, seconds: float) -> Sums | None:
    """The least spend with the best plan's hazards gone and at least 90 % of its improvement."""
    found = nearly_as_good(chooser, best, GOOD_SHARE, seconds)
    return None if found is None else chooser.in_figures(found)


def nearly_as_good(chooser: Chooser, best: Answer, share: Fraction, seconds: float) -> Plan | None:
    """The least spend with no more hazard points left than the best plan leaves, and a share of its improvement.

    None where that was not proven in the time.
    """
    if best.plan.spent_minor == 0 and best.proven:
        return best.plan
    points = before(chooser.base)[2]
    gained = points - best.plan.points
    least = -(-gained * share.numerator // share.denominator) if gained > 0 else gained
    extra = Extra(
        hazards_at_most=best.plan.hazards,
        points_at_most=points - least,
        voices_at_most=_nearly(chooser, best.plan, share),
        spend_first=True,
    )
    found = chooser.best(seconds, extra, depth="set")
    return found.plan if isinstance(found, Answer) and found.proven else None


def _nearly(chooser: Chooser, plan: Plan, share: Fraction) -> tuple[int, ...]:
    """Points that may remain in the eyes of each voice when a share of what each gets is to be there."""
    there = remaining(chooser.growth, ())[2:]
    gains = [before - left for before, left in zip(there, plan.voices, strict=True)]
    kept = [-(-gain * share.numerator // share.denominator) if gain > 0 else gain for gain in gains]
    return tuple(before - least for before, least in zip(there, kept, strict=True))


def free(chooser: Chooser, best: Answer, seconds: float) -> Sums | None:
    """The best plan with nothing spent; None where the musts cost money."""
    if best.plan.spent_minor == 0 and best.proven:
        return chooser.in_figures(best.plan)
    found = chooser.best(seconds, Extra(spend_at_most=0), depth="set")
    return chooser.in_figures(found.plan) if isinstance(found, Answer) and found.proven else None


@dataclass(frozen=True)
class Others:
    """The best plans for other sums of money, cheapest first, the one in hand among them; and the next step up."""

    plans: tuple[Plan, ...] = ()
    next: NextStep = field(default_factory=NextStep)


def other_sums(chooser: Chooser, best: Answer, seconds: float) -> Others:
    """Best plans for other sums of money, cheapest first, this one among them; then one point and one hour more."""
    problem = chooser.framed.problem
    if problem.must_all or not best.proven:
        return Others()
    until = chooser.clock() + seconds
    found = curve(
        problem,
        best.plan,
        seconds=seconds * CURVE,
        clock=chooser.clock,
        growth=chooser.growth,
        report=chooser.report,
        most=None if len(problem.options) <= EXACT_UP_TO else MOST_SOLVES,
    )
    return Others(found.plans, _next_step(chooser, best.plan, found, until))


def _next_step(chooser: Chooser, mine: Plan, found: Curve, until: float) -> NextStep:
    """One point more, from the curve where that tells it, else by a solve of its own; one hour more.

    The photographs end all work: no hour is offered that would run into them.
    """
    problem = chooser.framed.problem
    point = found.after(mine.spent_minor)
    if point is None and not problem.phases:
        left = until - chooser.clock()
        point = next_point(problem, mine, seconds=left, clock=chooser.clock, growth=chooser.growth)
    session = longer_session(problem)
    if session is not None and session < chooser.base.rest.live:
        session = None
    hour = None
    if session is not None and not photographed_by(chooser.base.brief, session, 60):
        left = until - chooser.clock()
        hour = next_hour(problem, mine, seconds=left, clock=chooser.clock, growth=chooser.growth)
    return NextStep(
        more_plan(chooser, mine, chooser.in_figures(point)) if isinstance(point, Plan) else None,
        isinstance(point, NoPlan),
        more_plan(chooser, mine, chooser.in_figures(hour, an_hour_longer(problem))) if hour is not None else None,
        0 if session is None else session + 1,
        found.complete,
    )


def more_plan(chooser: Chooser, mine: Plan, other: Sums) -> MorePlan:
    """Another plan in figures, and how it differs from the one in hand."""
    names = {id: one.name for id, one in chooser.framed.candidates.items()}
    here, there = {id for id in mine.chosen if not id.startswith(ERRAND)}, set(other.chosen)
    return MorePlan(
        other.spent_minor,
        other.improvement,
        other.hazards_after,
        other.minutes,
        tuple(names[id] for id in sorted(there - here)),
        tuple(names[id] for id in sorted(here - there)),
        other.spent_minor == mine.spent_minor + chooser.base.brief.fixed_minor and here == there,
    )


def with_money_for(problem: Problem, plan: Plan) -> Problem:
    """The same problem with a budget that is no smaller than what the plan spends."""
    if problem.budget_minor is None:
        return problem
    return replace(problem, budget_minor=max(problem.budget_minor, plan.spent_minor))
