"""How long things take in this household: learnt from the minutes that done steps really took.

The arithmetic, all in exact fractions. Planned minutes here are those before any pace was applied.

- The household: F = (4 S + N r) / (4 + N), with r = all real minutes / all planned minutes of the N steps of which real
  minutes are known, and S what was believed before (`pace: {all: ...}` of the brief, else 1).
- One kind of work: f = (2 s + n q) / (2 + n), with q the same ratio over its n steps, and s what the brief believes of
  that kind, else F.
- Both are kept within 1/2 and 2. A step not yet done is planned at its minutes x f, rounded up; low, likely, high and
  the minutes of help alike. Errands keep theirs: shops and roads have their own pace.

Why damped: one step that took twice as long says little of the next. So what was believed counts like four steps (two
for a kind), and evidence takes over as it adds up: shrinkage towards a prior belief is common practice; this formula
and its weights are ours.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from budgetfix.remedies.candidate import Candidate, Work

ALL = "all"
"""The household's own pace, in the brief's `pace`; all else there names a kind."""
HOUSEHOLD_WEIGHT, KIND_WEIGHT = 4, 2
"""How many steps the belief counts for."""
NO_KIND = frozenset({"", "declared"})
"""What the user's own remedies are where they name no kind: they tell of the household alone."""
SLOWEST, QUICKEST = Fraction(2), Fraction(1, 2)

Pace = tuple[tuple[str, Fraction], ...]
"""(kind or "all", times), as in the brief."""


@dataclass(frozen=True, slots=True)
class Took:
    """A done step: its kind, its minutes as planned before any pace, and the minutes it really took."""

    kind: str
    planned_minutes: int
    real_minutes: int


@dataclass(frozen=True, slots=True)
class Learnt:
    """What was learnt of one kind, or of the household (`kind` "all"): `steps` took `real` for `planned` minutes.

    `believed` and its `weight` in steps, and what comes of both: `counted`, within 1/2 and 2.
    """

    kind: str
    steps: int
    planned_minutes: int
    real_minutes: int
    believed: Fraction
    weight: int
    counted: Fraction

    @property
    def ratio(self) -> Fraction:
        """Real minutes by planned ones."""
        return Fraction(self.real_minutes, self.planned_minutes)


@dataclass(frozen=True, slots=True)
class Paces:
    """Times by which planned minutes are taken: of some kinds, and `household` for all others.

    `learnt`: what came of real minutes, the household first, then kinds by name; empty where nothing did.
    """

    household: Fraction = Fraction(1)
    kinds: Pace = ()
    learnt: tuple[Learnt, ...] = ()

    def of(self, kind: str) -> Fraction:
        """The times for one kind of work."""
        return dict(self.kinds).get(kind, self.household)

    @property
    def pace(self) -> Pace:
        """As the brief's `pace`: a job with that is planned the same."""
        return tuple(sorted(((ALL, self.household), *self.kinds)))


def learnt(pace: Pace, took: Iterable[Took]) -> Paces:
    """The household's paces from what the brief believes and what done steps really took."""
    believed = dict(pace)
    known = [one for one in took if one.planned_minutes > 0]
    household = _learnt(ALL, known, believed.pop(ALL, Fraction(1)), HOUSEHOLD_WEIGHT)
    rows = []
    for kind in sorted({one.kind for one in known} - NO_KIND):
        mine = [one for one in known if one.kind == kind]
        rows.append(_learnt(kind, mine, believed.get(kind, household.counted), KIND_WEIGHT))
    believed |= {row.kind: row.counted for row in rows}
    return Paces(household.counted, tuple(sorted(believed.items())), (household, *rows) if known else ())


def _learnt(kind: str, took: Sequence[Took], believed: Fraction, weight: int) -> Learnt:
    planned, real = sum(one.planned_minutes for one in took), sum(one.real_minutes for one in took)
    steps = len(took)
    counted = (weight * believed + steps * Fraction(real, planned)) / (weight + steps) if steps else believed
    return Learnt(kind, steps, planned, real, believed, weight, min(SLOWEST, max(QUICKEST, counted)))


def paced(candidates: Iterable[Candidate], paces: Paces) -> tuple[Candidate, ...]:
    """The candidates with the minutes that they take this household; again from the first minutes, if done before."""
    return tuple(_paced(one, paces.of(one.kind)) for one in candidates)


def _paced(one: Candidate, times: Fraction) -> Candidate:
    if times == 1 and not any(work.base for work in one.work):
        return one
    return replace(one, work=tuple(_work(work, times) for work in one.work))


def _work(work: Work, times: Fraction) -> Work:
    base = work.base or (work.minutes, work.low, work.likely, work.high, work.help)
    minutes, low, likely, high, help = (math.ceil(figure * times) for figure in base)
    taken = base if times != 1 else ()
    return replace(work, minutes=minutes, low=low, likely=likely, high=high, help=help, base=taken)
