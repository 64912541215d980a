"""The demo plans by the clock: every session laid out minute by minute, person by person."""

from __future__ import annotations

import pytest

from tests.outcome.minutes import of_session, troubles
from tests.scenarios import EACH, RENTER, job, run

pytestmark = pytest.mark.slow


@EACH
def test_nobody_is_in_two_places(name: str) -> None:
    """Each step of each plan has its minutes, as long as planned, within the hours of whoever does it."""
    book = run(name).book
    for row in book.sessions or ():
        laid, there = of_session(book, row.number)
        assert troubles(laid, there, job(name).brief.setup_minutes) == []
    for task in book.tasks:
        assert {name for spell in task.spells for name in spell.who} == set(task.who)
        assert sum(spell.end - spell.begin for spell in task.spells) == task.minutes


@EACH
def test_the_list_is_in_the_order_of_the_clock(name: str) -> None:
    """Within a session, what begins earlier stands higher."""
    for row in run(name).book.sessions or ():
        begins = [task.spells[0].begin for task in run(name).book.tasks if task.session == row.number]
        assert begins == sorted(begins)


@RENTER
def test_the_friend_is_there_for_two_and_a_half_hours() -> None:
    """The renter's friend comes for 150 of the 210 minutes of session 2, and has gone home by then."""
    book = run("renter").book
    row = (book.sessions or ())[1]
    assert [(name, there) for name, there, _ in row.who] == [("me", 210), ("friend", 150)]
    ends = [spell.end for task in book.tasks for spell in task.spells if "friend" in spell.who]
    assert 0 < max(ends) <= 150


@pytest.mark.xdist_group("couple")
def test_the_couple_person_by_person() -> None:
    """Adult 1 works in all six sessions, adult 2 in the four without a nap or a shop, both within their hours."""
    spells = [(task.session, spell) for task in run("couple").book.tasks for spell in task.spells]
    hours = dict(zip(range(1, 7), (90, 150, 120, 150, 210, 150), strict=True))
    assert all(spell.end <= hours[session or 0] for session, spell in spells)
    alone = {session for session, spell in spells if "adult 2" in spell.who}
    assert alone <= {2, 4, 5, 6}
    assert any(len(spell.who) == 2 for _, spell in spells)


@pytest.mark.xdist_group("stager")
def test_the_stagers_two_work_side_by_side() -> None:
    """Two people on one day: at some minute both work, each on something else."""
    book = run("stager").book
    laid, _ = of_session(book, 1)
    assert any(
        one.people != other.people and len(one.people) == 1 == len(other.people) and one.begin < other.end
        and other.begin < one.end
        for one in laid
        for other in laid
    )  # fmt: skip
