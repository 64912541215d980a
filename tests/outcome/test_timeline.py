"""The minutes of one session: for two people they always come out, and no minute is given away twice."""

from __future__ import annotations

import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from budgetfix.optimize import solve
from budgetfix.optimize.problem import Answer, Placed, Problem
from budgetfix.outcome.timeline import BREATHER, Piece, laid_out
from tests.optimize.worlds import helped, random_world, still
from tests.outcome.minutes import Laid, troubles

TWO = ("ann", "ben")


def looked_at(pieces: tuple[Piece, ...], begins: tuple[int, ...], there: dict[str, int], setup: int = 0) -> list[str]:
    """The outside look at pieces and the minutes at which they begin."""
    laid = [
        Laid(str(place), piece.people, begin, begin + piece.minutes, tuple(map(str, piece.after)))
        for place, (piece, begin) in enumerate(zip(pieces, begins, strict=True))
    ]
    return troubles(laid, there, setup)


@st.composite
def sessions_of_two(draw: st.DrawFn) -> tuple[tuple[Piece, ...], dict[str, int], int]:
    """Pieces whose people did what they follow, and just the minutes that each person needs: no minute to spare."""
    pieces: list[Piece] = []
    for place in range(draw(st.integers(1, 9))):
        people = draw(st.sampled_from((("ann",), ("ben",), TWO)))
        earlier = [one for one in range(place) if set(people) <= set(pieces[one].people)]
        after = draw(st.sampled_from([None, *earlier]))
        pieces.append(Piece(people, draw(st.integers(0, 40)), () if after is None else (after,)))
    setup = draw(st.sampled_from((0, 10)))
    need = {name: setup + sum(piece.minutes for piece in pieces if name in piece.people) for name in TWO}
    return tuple(pieces), need, setup


@settings(deadline=None, max_examples=400)
@given(sessions_of_two())
def test_two_people_always_get_through(session: tuple[tuple[Piece, ...], dict[str, int], int]) -> None:
    """A step that follows another in a session is done by people who did that one: then both get through."""
    pieces, there, setup = session
    begins = laid_out(pieces, there, setup)
    assert begins is not None
    assert looked_at(pieces, begins, there, setup) == []


def needed_first(problem: Problem) -> list[str]:
    """Ids in an order in which what is needed comes first."""
    found: list[str] = []
    waiting = sorted(problem.options, key=lambda one: one.id)
    while waiting:
        one = next(one for one in waiting if set(one.needs) <= set(found))
        found.append(one.id)
        waiting.remove(one)
    return found


def parts(problem: Problem, placed: tuple[Placed, ...], session: int) -> tuple[tuple[Piece, ...], dict[str, int]]:
    """One session of a placing as pieces; a step follows the one before it, a first step what its option needs."""
    by_id = {one.id: one for one in problem.options}
    order = {id: place for place, id in enumerate(needed_first(problem))}
    here = sorted(
        (one for one in placed if one.session == session), key=lambda one: (order[one.option], one.option, one.step)
    )
    number: dict[tuple[str, int], int] = {}
    pieces: list[Piece] = []
    for one in here:
        needs = [(need, len(by_id[need].steps) - 1) for need in by_id[one.option].needs]
        before = [(one.option, one.step - 1)] if one.step else needs
        after = tuple(number[key] for key in before if key in number)
        step = by_id[one.option].steps[one.step]
        if step.help:
            pieces.append(Piece(one.people, step.help, after))
            after = (len(pieces) - 1,)
        number[one.option, one.step] = len(pieces)
        people, minutes = (one.people[:1], step.minutes - step.help) if step.help else (one.people, step.minutes)
        pieces.append(Piece(people, minutes, after))
    there = (problem.sessions or ())[session].minutes
    return tuple(pieces), dict(zip(problem.people, there, strict=True))


@pytest.mark.parametrize("people", [1, 2, 3])
def test_what_the_optimizer_places_has_its_minutes(people: int) -> None:
    """Random jobs with joint steps, help, needs, waits and setting up: every session comes out, minute by minute."""
    seen = 0
    for number in range(40):
        world = random_world(number, people=people, options=5)
        problem = (helped(world, number) if number % 2 else world).problem
        answer = solve(problem, clock=still)
        if not isinstance(answer, Answer):
            continue
        for session in range(len(problem.sessions or ())):
            pieces, there = parts(problem, answer.plan.placed, session)
            begins = laid_out(pieces, there, problem.setup_minutes)
            if people < 3:
                assert begins is not None
            if begins is not None:
                assert looked_at(pieces, begins, there, problem.setup_minutes) == []
                seen += len(pieces)
    assert seen > 20


def test_working_order_where_nobody_waits_long() -> None:
    """Both do a strap of their own, then the bed together: that is the order of the list, and no minute is lost."""
    pieces = (Piece(("ann",), 30), Piece(("ben",), 30), Piece(TWO, 60), Piece(("ann",), 20))
    assert laid_out(pieces, {"ann": 150, "ben": 150}) == (0, 0, 30, 90)


def test_together_first_where_somebody_would_wait() -> None:
    """An hour alone before the bed would leave the other standing about: so the bed comes first."""
    pieces = (Piece(("ann",), 60), Piece(TWO, 60))
    assert laid_out(pieces, {"ann": 150, "ben": 150}) == (60, 0)
    short = (Piece(("ann",), BREATHER), Piece(TWO, 60))
    assert laid_out(short, {"ann": 150, "ben": 150}) == (0, BREATHER)
    assert laid_out(short, {"ann": 150, "ben": 60}) == (60, 0)


def test_a_gap_before_joint_work_is_filled() -> None:
    """While one is still at the strap, the other does the lamps that come later in the list."""
    pieces = (Piece(("ann",), 40), Piece(TWO, 60), Piece(("ben",), 30))
    assert laid_out(pieces, {"ann": 100, "ben": 100}) == (0, 40, 0)


def test_setting_up_comes_first() -> None:
    """Ten minutes of setting up for each person, then work."""
    pieces = (Piece(("ann",), 20), Piece(("ben",), 20))
    assert laid_out(pieces, {"ann": 30, "ben": 30}, 10) == (10, 10)
    assert laid_out(pieces[:1], {"ann": 30, "ben": 0}, 10) == (10,)


def test_three_pairs_do_not_fit_where_the_totals_do() -> None:
    """Three pairs of an hour need three hours by the clock; in two hours each there are no times, not wrong ones."""
    pairs = (("ann", "ben"), ("ben", "cem"), ("ann", "cem"))
    pieces = tuple(Piece(pair, 60) for pair in pairs)
    assert laid_out(pieces, {"ann": 120, "ben": 120, "cem": 120}) is None
    assert laid_out(pieces, {"ann": 180, "ben": 180, "cem": 180}) == (0, 60, 120)


def test_two_pairs_work_side_by_side() -> None:
    """Four people, two pieces of furniture: both pairs begin at once."""
    pieces = (Piece(("ann", "ben"), 60), Piece(("cem", "dot"), 60))
    assert laid_out(pieces, dict.fromkeys(("ann", "ben", "cem", "dot"), 60)) == (0, 0)


def test_the_outside_look_finds_what_is_wrong() -> None:
    """A planted clash each: in two places, before what it follows, while setting up, after going home."""
    dice = random.Random(1)
    pieces = (Piece(TWO, 30), Piece(("ann",), 20, (0,)))
    there = {"ann": 60, "ben": 60}
    assert looked_at(pieces, (10, 40), there, 10) == []
    for begins in ((10, 20 + dice.randint(0, 19)), (0, 40), (10, 41)):
        assert looked_at(pieces, begins, there, 10) != []
    assert looked_at(pieces[:1], (31,), there) != []
