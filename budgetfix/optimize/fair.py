"""The fair choice for two people who want different things from the same money, hours and walls.

Each has an ideal: what would be taken away, in his or her own eyes, if only that person were asked. A plan gives each a
share of the own ideal. The fair plan is lexicographic max-min: the smaller share as large as can be, then the larger
one; then the larger sum of both gains. Shares, not sums: whoever doubles all priorities doubles the ideal as well, and
gains nothing by it. They are compared as exact fractions.

Of all plans only those count that nobody could better for one without loss for the other. They are asked for by
epsilon-constraint (see `curve`): the most for the first while the second keeps at least so much. As the first one's
share falls along them and the second one's rises, the best smaller share lies where they cross, so that is looked for.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from fractions import Fraction

from budgetfix.optimize.asking import Asking
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.growth import Growth, remaining
from budgetfix.optimize.problem import Extra, NoPlan, Plan, Problem, Report, Round
from budgetfix.optimize.solver import Engine

Pair = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Fair:
    """Gains are points taken away in the eyes of the first and of the second person.

    `alone`: the plan of each, asked alone; `ideals`: what it gains its own person. `gains`: of the fair plan. `proven`
    False: the clock ended first, and a fairer plan may exist. `plan` holds the fair set; its ties and the order of its
    steps are not settled.
    """

    plan: Plan
    alone: tuple[Plan, Plan]
    ideals: Pair
    gains: Pair
    proven: bool
    solves: int

    @property
    def shares(self) -> tuple[Fraction, Fraction]:
        """Of the own ideal, each."""
        return share(self.gains[0], self.ideals[0]), share(self.gains[1], self.ideals[1])


def missed(problem: Problem, growth: Growth, fair: Fair, plan: Plan, voice: int) -> tuple[str, ...]:
    """What a person's own plan holds and `plan` does not, though that person would gain by it there.

    It takes the place of what cannot stand beside it; money and hours are no matter.
    """
    against, mine = Facts.of(problem).against, frozenset(plan.chosen)
    return tuple(
        id
        for id in sorted(set(fair.alone[voice].chosen) - mine)
        if remaining(growth, (mine - against[id]) | {id})[2 + voice] < plan.voices[voice]
    )


def share(gain: int, ideal: int) -> Fraction:
    """Of an ideal. Whoever can gain nothing has a full share, less every point that is lost."""
    return Fraction(gain, ideal) if ideal > 0 else Fraction(1 + gain - ideal)


def fairness(gains: Pair, ideals: Pair) -> tuple[Fraction, Fraction, int, int]:
    """How fair a plan is; more is better."""
    low, high = sorted((share(gains[0], ideals[0]), share(gains[1], ideals[1])))
    return low, high, sum(gains), gains[0]


def fairest(
    problem: Problem,
    *,
    seconds: float,
    clock: Callable[[], float],
    growth: Growth | None = None,
    report: Report | None = None,
    engine: Engine = "highs",
    extra: Extra | None = None,
    known: tuple[Plan, ...] = (),
) -> Fair | NoPlan | None:
    """The fair plan within the limits of a problem whose trees tell the points of two voices, and of `extra`.

    Hazard points come first here, too. None: the clock ended before both ideals were known.
    """
    grown = growth or Growth(problem)
    asking = Asking(problem, grown, clock, clock() + seconds, report, engine, list(known), "worth")
    there = remaining(grown, ())[2:]
    search = _Crossing(asking, extra or Extra(), (there[0], there[1]))
    return search.run()


@dataclass
class _Crossing:
    """Two plans nobody could better, one on each side of where the shares cross."""

    asking: Asking
    extra: Extra
    there: Pair

    def run(self) -> Fair | NoPlan | None:
        first = self.asking.ask(replace(self.extra, voices=(0, 1)))
        if not isinstance(first, Plan):
            return first
        second = self.asking.ask(replace(self._as_safe(first), voices=(1, 0)))
        if not isinstance(second, Plan):
            return second
        ideals = (self.gains(first)[0], self.gains(second)[1])
        best, done = self._between(first, second, ideals)
        return Fair(best, (first, second), ideals, self.gains(best), done, self.asking.solves)

    def gains(self, plan: Plan) -> Pair:
        """Points taken away in the eyes of each."""
        return self.there[0] - plan.voices[0], self.there[1] - plan.voices[1]

    def _as_safe(self, plan: Plan) -> Extra:
        safe = plan.hazards if self.asking.problem.hazards_first else None
        return replace(self.extra, hazards_at_most=safe)

    def _between(self, first: Plan, second: Plan, ideals: Pair) -> tuple[Plan, bool]:
        """The fairest plan, and whether it is proven. `low`: below it nothing fairer is left for the second."""
        within, low = self._as_safe(first), second.voices[1]
        best = max(first, second, key=lambda plan: fairness(self.gains(plan), ideals))
        while self._open(first, low, ideals):
            top = first.voices[1] - 1
            most = top if self.asking.solves % 2 else (low + top) // 2
            self._tell()
            found = self.asking.ask(replace(within, voices=(0, 1), voices_at_most=(None, most)))
            if found is None:
                return best, False
            if isinstance(found, NoPlan):
                break
            best = max(best, found, key=lambda plan: fairness(self.gains(plan), ideals))
            if self._crossed(found, ideals):
                low = most + 1
            else:
                first = found
        return best, True

    def _open(self, first: Plan, low: int, ideals: Pair) -> bool:
        """True while a plan that gives the second more than `first` does, within what is open, may be fairer."""
        return not self._crossed(first, ideals) and low <= first.voices[1] - 1

    def _crossed(self, plan: Plan, ideals: Pair) -> bool:
        """True where the first has no larger share than the second."""
        gains = self.gains(plan)
        return share(gains[0], ideals[0]) <= share(gains[1], ideals[1])

    def _tell(self) -> None:
        if self.asking.report is not None:
            self.asking.report(Round("fair", self.asking.solves, None))
