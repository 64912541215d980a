"""The working order inside a session."""

from __future__ import annotations

from budgetfix.outcome.order import Slot, predecessors, working_order


def test_phase_by_phase_and_the_longest_first() -> None:
    """Safety comes before furniture, furniture before art; within a phase the longest first."""
    slots = [
        Slot(("art", 0), 11, 20),
        Slot(("bench", 0), 8, 60),
        Slot(("rug", 0), 7, 40),
        Slot(("strap", 0), 1, 30),
        Slot(("table", 0), 8, 5),
    ]
    assert [key[0] for key in working_order(slots)] == ["strap", "rug", "bench", "table", "art"]


def test_what_waits_for_an_errand_comes_after_it() -> None:
    """The strap is safety, but its straps are still in the shop."""
    slots = [
        Slot(("strap", 0), 1, 30, (("errand:shops", 0),)),
        Slot(("errand:shops", 0), 2, 120),
        Slot(("heater", 0), 1, 5),
    ]
    assert [key[0] for key in working_order(slots)] == ["heater", "errand:shops", "strap"]


def test_steps_of_one_task_keep_their_order() -> None:
    """A second step comes after the first, a first step after all that it needs."""
    assert predecessors("m", 1, ("n",), {"n": 2}) == (("m", 0),)
    assert predecessors("m", 0, ("n", "gone"), {"n": 2}) == (("n", 2),)
