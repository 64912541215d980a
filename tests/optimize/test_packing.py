"""Filling sessions: by rule, and exactly as a flow."""

from __future__ import annotations

import random

import pytest

from budgetfix.optimize.flow import fewest
from budgetfix.optimize.packing import Work, packed


def _right(work: Work, room: list[int], found: tuple[int, ...]) -> bool:
    used = [0] * len(room)
    for step, session in enumerate(found):
        used[session] += work.minutes[step]
    before = all(found[one] <= found[step] for step, ahead in enumerate(work.before) for one in ahead)
    return before and all(spent <= there for spent, there in zip(used, room, strict=True))


@pytest.mark.parametrize("number", range(8))
def test_what_is_packed_fits(number: int) -> None:
    """Random chains in sessions that hold them with some room to spare: all placed, in order, nothing too full."""
    dice = random.Random(number)
    minutes = tuple(dice.randint(5, 40) for _ in range(20))
    before = tuple(tuple(sorted({dice.randrange(step)})) if step and dice.random() < 0.6 else () for step in range(20))
    room = [60] * (sum(minutes) // 60 + 3)
    found = packed(Work(minutes, before), room)
    assert found is not None
    assert _right(Work(minutes, before), room, found)


def test_too_little_room_is_not_packed() -> None:
    """Three steps of 40 do not go into two sessions of 60."""
    assert packed(Work((40, 40, 40), ((), (), ())), [60, 60]) is None


def test_jackson_in_six_stations() -> None:
    """Jackson's eleven tasks at nine minutes a station take six (Jackson, Management Science 2, 1956; by memory)."""
    minutes = (6, 2, 5, 7, 1, 2, 3, 6, 5, 5, 4)
    before = ((), (0,), (0,), (0,), (0,), (1,), (2, 3, 4), (5,), (6,), (7,), (8, 9))
    assert packed(Work(minutes, before), [9] * 6) is not None
    assert packed(Work(minutes, before), [9] * 5) is None


def test_a_flow_finds_what_rules_miss() -> None:
    """Four sessions of 10 filled to the brim, where longest-first takes five."""
    minutes = (5, 5, 4, 4, 3, 3, 4, 2, 3, 7)
    found = fewest(minutes, 10, 30.0)
    assert found != "unknown"
    assert len(found) == 4
    assert sorted(place for session in found for place in session) == list(range(10))
    assert all(sum(minutes[place] for place in session) <= 10 for session in found)


def test_a_flow_needs_seconds() -> None:
    """Without time nothing is said."""
    assert fewest((5, 5), 10, 0.0) == "unknown"


def test_steps_without_minutes_go_along() -> None:
    """A step of no minutes stands in a session like any other."""
    assert fewest((5, 0), 10, 30.0) == [[0, 1]]
