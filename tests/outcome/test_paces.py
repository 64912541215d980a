"""How long things take in this household: hand-worked figures, limits, and what more evidence does."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from budgetfix.outcome.paces import QUICKEST, SLOWEST, Learnt, Paces, Took, learnt, paced
from budgetfix.remedies.candidate import Candidate, Work

RODS = tuple(Took("longer-rod", 30, 45) for _ in range(3))
PAINT = (Took("paint-wall", 60, 60),)
TOOK = st.builds(Took, st.sampled_from(("a", "b", "declared")), st.integers(1, 300), st.integers(0, 900))
TIMES = st.fractions(QUICKEST, SLOWEST, max_denominator=50)


def test_nothing_known() -> None:
    """Without a belief and without a done step everything takes its usual minutes."""
    paces = learnt((), ())
    assert paces == Paces()
    assert paces.of("longer-rod") == 1


def test_rods_by_hand() -> None:
    """Three rods of 30 minutes took 45: the household 8.5/7 times, rods (2 x 17/14 + 3 x 3/2) / 5 = 97/70."""
    paces = learnt((), RODS)
    assert paces.household == Fraction(17, 14)
    assert paces.of("longer-rod") == Fraction(97, 70)
    assert paces.of("paint-wall") == Fraction(17, 14)
    assert paces.learnt == (
        Learnt("all", 3, 90, 135, Fraction(1), 4, Fraction(17, 14)),
        Learnt("longer-rod", 3, 90, 135, Fraction(17, 14), 2, Fraction(97, 70)),
    )


def test_two_kinds_by_hand() -> None:
    """With 60 minutes of paint in 60: all (4 + 4 x 195/150) / 8 = 23/20; paint (2 x 23/20 + 1) / 3 = 11/10."""
    paces = learnt((), (*RODS, *PAINT))
    assert paces.household == Fraction(23, 20)
    assert paces.of("paint-wall") == Fraction(11, 10)
    assert paces.of("longer-rod") == (2 * Fraction(23, 20) + 3 * Fraction(3, 2)) / 5


def test_a_belief_is_where_learning_starts() -> None:
    """The brief's paces stand in for 1 and for the household's; a kind of which nothing new is known keeps its own."""
    pace = (("all", Fraction(6, 5)), ("paint-wall", Fraction(3, 2)), ("strap", Fraction(4, 5)))
    paces = learnt(pace, (Took("paint-wall", 60, 60),))
    assert paces.household == (4 * Fraction(6, 5) + 1) / 5
    assert paces.of("paint-wall") == (2 * Fraction(3, 2) + 1) / 3
    assert paces.of("strap") == Fraction(4, 5)
    assert learnt(pace, ()).pace == pace


def test_own_remedies_tell_of_the_household_alone() -> None:
    """A remedy of no kind teaches no kind, but it does count for all."""
    paces = learnt((), (Took("declared", 10, 20),))
    assert paces.household == Fraction(6, 5)
    assert paces.kinds == ()
    assert [row.kind for row in paces.learnt] == ["all"]


def test_damped_and_within_limits() -> None:
    """One step at ten times its minutes does not make everything ten times as long; nothing leaves 1/2 to 2."""
    once = learnt((), (Took("a", 10, 12),))
    assert once.household == Fraction(26, 25)
    slow, quick = learnt((), [Took("a", 10, 100)] * 50), learnt((), [Took("a", 10, 0)] * 50)
    assert slow.household == slow.of("a") == SLOWEST
    assert quick.household == quick.of("a") == QUICKEST


def test_steps_without_minutes_tell_nothing() -> None:
    """A step that was planned at no minutes has no ratio."""
    assert learnt((), (Took("a", 0, 15),)) == Paces()


def one(kind: str = "longer-rod") -> Candidate:
    """A rod in two steps, the second with a hand to help."""
    work = (Work("drill", 30, 20, 28, 41), Work("hang", 11, 9, 11, 13, help=7))
    return Candidate(f"{kind}/w", kind, "Wider rod", work=work)


def test_minutes_of_the_rest() -> None:
    """All figures times the pace, rounded up; what they were before is kept, so that learning starts from it."""
    (slow,) = paced((one(),), learnt((), RODS))
    assert [(work.minutes, work.low, work.likely, work.high, work.help) for work in slow.work] == [
        (42, 28, 39, 57, 0),
        (16, 13, 16, 19, 10),
    ]
    assert [work.base_minutes for work in slow.work] == [30, 11]


def test_a_pace_is_not_taken_twice() -> None:
    """A candidate that already has a pace is taken from its first minutes; at the usual pace it is as it was."""
    paces = learnt((), RODS)
    once = paced((one(),), paces)
    assert paced(once, paces) == once
    assert paced(once, Paces()) == (one(),)
    assert paced((one(),), Paces()) == (one(),)


@given(st.lists(TOOK, max_size=12), st.lists(st.tuples(st.sampled_from(("all", "a", "b")), TIMES), max_size=3))
def test_paces_stay_within_limits(took: list[Took], pace: list[tuple[str, Fraction]]) -> None:
    """Whatever was typed, planned minutes are at least halved and at most doubled."""
    paces = learnt(tuple(dict(pace).items()), took)
    assert all(QUICKEST <= times <= SLOWEST for times in (paces.household, *dict(paces.kinds).values()))
    for work, before in zip(paced((one("a"),), paces)[0].work, one("a").work, strict=True):
        assert before.minutes / 2 <= work.minutes <= before.minutes * 2
        assert work.low <= work.likely <= work.high
        assert work.help <= work.minutes


@given(st.lists(TOOK, min_size=1, max_size=8), st.integers(0, 7), st.integers(1, 400))
def test_slower_steps_never_make_a_quicker_household(took: list[Took], at: int, more: int) -> None:
    """If one step had taken longer, no pace would be quicker, of its kind or of any other."""
    slower = list(took)
    was = slower[at % len(slower)]
    slower[at % len(slower)] = Took(was.kind, was.planned_minutes, was.real_minutes + more)
    before, after = learnt((), took), learnt((), slower)
    assert after.household >= before.household
    assert all(after.of(kind) >= before.of(kind) for kind in ("a", "b", "c"))


@given(st.integers(1, 20), TIMES)
def test_more_of_the_same_moves_on(count: int, times: Fraction) -> None:
    """Each further step at the same ratio brings the pace nearer to it, and never beyond."""
    minutes = 60 * times.denominator
    took = Took("a", minutes, math.floor(minutes * times))
    fewer, more = learnt((), [took] * count), learnt((), [took] * (count + 1))
    for before, after in ((fewer.household, more.household), (fewer.of("a"), more.of("a"))):
        assert abs(times - after) <= abs(times - before)
        assert (after - times) * (1 - times) >= 0


@pytest.mark.parametrize("kind", ["longer-rod", "strap"])
def test_a_brief_with_what_was_learnt_plans_the_same(kind: str) -> None:
    """The paces written as the brief's `pace` are the same paces."""
    paces = learnt((), (*RODS, *PAINT))
    assert learnt(paces.pace, ()).of(kind) == paces.of(kind)
