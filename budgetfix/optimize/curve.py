"""What other sums of money would buy: the best plan for each, exact where the clock allows, else honest marks.

The efficient points by epsilon-constraint: the best for at most E, at the least spend that reaches it; then the same
below that spend. After Y.Y. Haimes, L.S. Lasdon and D.A. Wismer, On a bicriterion formulation of the problems of
integrated system identification and system optimization, IEEE Transactions SMC 1, 1971.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from itertools import pairwise

from budgetfix.optimize.asking import Asking, doing
from budgetfix.optimize.growth import Growth
from budgetfix.optimize.problem import Extra, NoPlan, Plan, Problem, Report, Round
from budgetfix.optimize.solver import Engine

MARKS_BELOW, MARKS_ABOVE = 6, 3
"""Even steps of money tried below the plan, and between its budget and what buys most, before gaps are filled."""


@dataclass(frozen=True, slots=True)
class Gap:
    """What is best for more than `known` and less than `above` was not worked out: it lies between the neighbours'."""

    known: int
    above: int


@dataclass(frozen=True, slots=True)
class Curve:
    """Best plans for rising sums of money, each proven. `gaps` empty and `topped`: there are no others.

    `topped`: less money than the first plan's has no plan, and more than the last one's buys nothing.
    """

    plans: tuple[Plan, ...]
    gaps: tuple[Gap, ...]
    topped: bool
    hazards_first: bool = True

    @property
    def complete(self) -> bool:
        return not self.gaps and self.topped

    def after(self, spent_minor: int) -> Plan | NoPlan | None:
        """The next plan after one that spends so much; NoPlan: there is none; None: that is open."""
        here = [plan for plan in self.plans if plan.spent_minor <= spent_minor][-1:]
        dearer = [plan for plan in self.plans if plan.spent_minor > spent_minor and not self._as_much(plan, here)]
        if not dearer:
            return NoPlan() if self.topped and not self._open(spent_minor) else None
        return None if self._open(spent_minor, dearer[0].spent_minor) else dearer[0]

    def _as_much(self, plan: Plan, others: list[Plan]) -> bool:
        """True where a plan does as much as one of the others, with less left behind for more money."""
        if self.hazards_first:
            return any((one.hazards, one.points) == (plan.hazards, plan.points) for one in others)
        return any(one.hazards + one.points == plan.hazards + plan.points for one in others)

    def _open(self, above: int, upto: int | None = None) -> bool:
        """True where a gap lies between two sums."""
        return any(gap.above > above and (upto is None or gap.above <= upto) for gap in self.gaps)


@dataclass
class _Curving(Asking):
    """The efficient plans found so far."""

    plans: dict[int, Plan] = field(default_factory=dict)
    """By what they spend."""
    upto: dict[int, int] = field(default_factory=dict)
    """The largest sum for which each of them is proven best."""

    def tried(self, most: int) -> bool:
        """Work out what is best for at most so much; False when the clock stopped it."""
        found = self.ask(Extra(spend_at_most=most))
        if not isinstance(found, Plan):
            return False
        self.keep(found, most)
        return True

    def keep(self, plan: Plan, upto: int) -> None:
        """Take in a plan that is proven best for every sum from its own spend to `upto`."""
        self.plans.setdefault(plan.spent_minor, plan)
        self.upto[plan.spent_minor] = max(upto, self.upto.get(plan.spent_minor, 0))

    def gaps(self) -> tuple[Gap, ...]:
        """Sums between neighbours for which the best is not known."""
        spends = sorted(self.plans)
        return tuple(Gap(self.upto[lower], upper) for lower, upper in pairwise(spends) if self.upto[lower] < upper - 1)

    def room(self, gap: Gap) -> int:
        """How much could lie in a gap: money across times points between the neighbours."""
        lower = max(spent for spent in self.plans if spent <= gap.known)
        here, there = self.plans[lower], self.plans[gap.above]
        between = here.hazards - there.hazards + here.points - there.points
        return (gap.above - gap.known) * max(1, between)


def curve(
    problem: Problem,
    best: Plan,
    *,
    seconds: float,
    clock: Callable[[], float],
    growth: Growth | None = None,
    report: Report | None = None,
    engine: Engine = "highs",
    most: int | None = None,
) -> Curve:
    """The best plan for each sum of money; `best` is the proven one for the budget of the problem.

    `most`: after so many solves what is still open stays open. Where money comes in phases, only smaller sums of the
    same money are looked at: more of it would have to come on some day.
    """
    lifted = replace(problem, budget_minor=None)
    asking = _Curving(lifted, growth or Growth(problem), clock, clock() + seconds, report, engine, [best], "set")
    asking.keep(best, best.spent_minor if problem.budget_minor is None else problem.budget_minor)
    topped = _ends(asking, best, problem.budget_minor) and not asking.problem.phases
    for mark in _marks(asking, best):
        if any(gap.known < mark < gap.above for gap in asking.gaps()) and not asking.tried(mark):
            break
    while (gaps := asking.gaps()) and asking.left() > 0 and (most is None or asking.solves < most):
        widest = max(gaps, key=lambda gap: (asking.room(gap), gap.above))
        if report is not None:
            report(Round("curve", len(asking.plans), len(gaps)))
        if not asking.tried(widest.above - 1):
            break
    plans = tuple(asking.plans[spent] for spent in sorted(asking.plans))
    return Curve(plans, asking.gaps(), topped, problem.hazards_first)


def _ends(asking: _Curving, best: Plan, budget_minor: int | None) -> bool:
    """The plans for the least money and for any money at all; True where both are known."""
    least = asking.ask(Extra(spend_at_most=0))
    if isinstance(least, NoPlan):
        least = asking.ask(Extra(spend_first=True))
    if not isinstance(least, Plan):
        return False
    asking.keep(least, least.spent_minor)
    top = best if budget_minor is None or asking.problem.phases else asking.ask(Extra())
    if not isinstance(top, Plan):
        return False
    if top.spent_minor > best.spent_minor:
        asking.keep(top, top.spent_minor)
    return True


def _marks(asking: _Curving, best: Plan) -> list[int]:
    """Even steps of money, from the plan's own downwards, then from its budget upwards."""
    below = [best.spent_minor * step // MARKS_BELOW for step in range(MARKS_BELOW - 1, 0, -1)]
    floor, top = asking.upto[best.spent_minor], max(asking.plans)
    above = [floor + (top - floor) * step // (MARKS_ABOVE + 1) for step in range(1, MARKS_ABOVE + 1)]
    return [*below, *above] if top > floor else below


def next_point(
    problem: Problem,
    best: Plan,
    *,
    seconds: float,
    clock: Callable[[], float],
    growth: Growth | None = None,
    engine: Engine = "highs",
) -> Plan | NoPlan | None:
    """The least spend that takes away at least one point more than `best`, in the same hours.

    NoPlan: no money would. None: the clock stopped it.
    """
    lifted = replace(problem, budget_minor=None)
    asking = Asking(lifted, growth or Growth(problem), clock, clock() + seconds, engine=engine, depth="set")
    return asking.least(doing(problem, best, more=1))


def next_hour(
    problem: Problem,
    best: Plan,
    *,
    seconds: float,
    clock: Callable[[], float],
    growth: Growth | None = None,
    engine: Engine = "highs",
) -> Plan | None:
    """The best plan for the same money when the last session lasts an hour longer for everybody.

    It may be no better than `best`. None: there are no sessions, or the clock stopped it.
    """
    longer = an_hour_longer(problem)
    if longer is None:
        return None
    asking = Asking(longer, growth or Growth(longer), clock, clock() + seconds, engine=engine, seen=[best], depth="set")
    found = asking.ask(Extra())
    return found if isinstance(found, Plan) else None


def longer_session(problem: Problem) -> int | None:
    """The session (from 0) that `an_hour_longer` makes longer: the last in which a step may stand."""
    count = len(problem.sessions or ())
    last = count - 1 if problem.last_session is None else min(problem.last_session, count - 1)
    return last if last >= 0 else None


def an_hour_longer(problem: Problem, minutes: int = 60) -> Problem | None:
    """The same problem with a longer last session; None where there is none."""
    last, sessions = longer_session(problem), problem.sessions or ()
    if last is None:
        return None
    old = sessions[last]
    new = replace(old, end_minute=old.end_minute + minutes, minutes=tuple(there + minutes for there in old.minutes))
    return replace(problem, sessions=(*sessions[:last], new, *sessions[last + 1 :]))
