"""A plan played out: single rules by hand, and every draw of small plans held against a second coding of the words."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from budgetfix.optimize.facts import Facts
from budgetfix.optimize.problem import Option, Placed, Plan, Problem, Session, Step
from budgetfix.outcome.playing import Played, Turn, fetched, played
from tests.outcome.replayed import Household, Piece, one_draw
from tests.outcome.small_worlds import World

SESSIONS = (Session(540, 660, (60,)), Session(1980, 2100, (60,)), Session(3420, 3540, (60,)))
DRAWS = 40


def play(options: tuple[Option, ...], turns: tuple[Turn, ...], minutes: list[float], sessions=SESSIONS) -> list[int]:  # type: ignore[no-untyped-def]
    """The session of each turn in one draw; 3 where it fell off."""
    facts = Facts.of(Problem(options, sessions=sessions))
    return [int(one) for one in played(facts, turns, np.array(minutes)[:, None]).stands[:, 0]]


def alone(id: str, session: int = 0, minutes: int = 30) -> Turn:
    """A step that one person does."""
    return Turn(id, 0, session, ("1",), minutes)


def test_what_does_not_fit_is_put_off_and_comes_first_there() -> None:
    """A takes 45 of 60 minutes, so b is put off; in the next session b comes before c, which is put off in turn."""
    options = tuple(Option(id, steps=(Step(30),)) for id in "abc")
    turns = (alone("a"), alone("b"), alone("c", 1))
    assert play(options, turns, [45, 40, 30]) == [0, 1, 2]


def test_a_shorter_step_may_still_be_begun() -> None:
    """What does not fit makes way for what does."""
    options = tuple(Option(id, steps=(Step(30),)) for id in "abc")
    assert play(options, (alone("a"), alone("b"), alone("c")), [45, 40, 15]) == [0, 1, 0]


def test_nothing_is_brought_forward_and_the_last_falls_off() -> None:
    """An empty session stays empty; what fits into no session falls off."""
    options = tuple(Option(id, steps=(Step(30),)) for id in "ab")
    assert play(options, (alone("a", 1), alone("b", 2)), [10, 61]) == [1, 3]


def test_what_needs_a_fallen_one_falls_off() -> None:
    """B needs a, and a finds no session."""
    options = (Option("a", steps=(Step(30),)), Option("b", steps=(Step(30),), needs=("a",)))
    assert play(options, (alone("a"), alone("b")), [61, 10]) == [3, 3]


def test_goods_wait_for_the_first_round_that_fetches_them() -> None:
    """Bought in the second phase, so the round of the first one does not help; the second coding says the same."""
    session = Session(540, 660, (120,))
    sessions = (session, replace(session, start_minute=1980, end_minute=2100))
    rug = Option("rug", steps=(Step(30),), arrivals=(0, 0), rounds=(("go", "go@2"),))
    options = (Option("go", steps=(Step(30),)), Option("go@2", steps=(Step(30),)), rug)
    placed = tuple(Placed(id, 0, at, ("1",)) for id, at in (("go", 0), ("go@2", 1), ("rug", 1)))
    plan = Plan(("go", "go@2", "rug"), placed, 0, 0, 0, 90, buys=(("rug", 1),))
    problem = fetched(Problem(options, sessions=sessions), plan)
    assert problem.options[2].needs == ("go@2",)
    turns = tuple(alone(one.option, one.session or 0) for one in placed)
    for minutes, stands in (([30, 30, 30], [0, 1, 1]), ([30, 121, 30], [0, 2, 2]), ([121, 30, 30], [2, 1, 1])):
        found = played(Facts.of(problem), turns, np.array(minutes, dtype=float)[:, None]).stands[:, 0]
        assert found.tolist() == stands
        home = Household(("1",), sessions, {one.id: one for one in options}, fetched={"rug": ("go@2",)})
        pieces = [Piece(turn.option, 0, turn.session, ("1",), (30.0, 30.0, 30.0), 30) for turn in turns]
        where = one_draw(home, pieces, {(turn.option, 0): one for turn, one in zip(turns, minutes, strict=True)}).where
        assert [where.get(piece.key, 2) for piece in pieces] == stands


def test_a_wait_counts_from_where_the_step_stands() -> None:
    """The second coat waits a session, so when the first is put off the second is as well."""
    options = (Option("z", steps=(Step(30),)), Option("a", steps=(Step(30), Step(30, wait_sessions=1))))
    turns = (alone("z"), alone("a"), Turn("a", 1, 1, ("1",), 30))
    assert play(options, turns, [20, 30, 30]) == [0, 0, 1]
    assert play(options, turns, [40, 30, 30]) == [0, 1, 2]


def test_quiet_sessions_stay_quiet() -> None:
    """Drilling that is put off passes over the quiet session."""
    options = (Option("a", steps=(Step(30),)), Option("b", steps=(Step(30, loud=True),)))
    quiet = (SESSIONS[0], replace(SESSIONS[1], quiet=True), SESSIONS[2])
    assert play(options, (alone("a"), alone("b")), [40, 30], quiet) == [0, 2]


def test_a_helper_gives_as_large_a_part_as_planned() -> None:
    """10 of 30 minutes of help become 20 of 60; the helper has 20, and then none for a second time."""
    options = tuple(Option(id, steps=(Step(30, help=10),)) for id in "ab")
    sessions = (Session(540, 660, (120, 20)),)
    facts = Facts.of(Problem(options, people=("1", "2"), sessions=sessions))
    turns = tuple(Turn(id, 0, 0, ("1", "2"), 30, 10) for id in "ab")
    assert played(facts, turns, np.array([[60.0], [59.0]])).stands[:, 0].tolist() == [0, 1]


@given(st.integers(0, 10**6))
def test_every_draw_comes_out_as_by_the_words(seed: int) -> None:
    """Random small plans with waits, needs, two people, helpers: the same steps in the same sessions, draw by draw."""
    world = World(seed)
    draws = np.random.RandomState(seed).uniform(0.3, 2.5, (len(world.pieces), DRAWS))
    minutes = draws * np.array([[piece.minutes] for piece in world.pieces])
    found = played(world.facts, world.turns, minutes)
    for draw in range(DRAWS):
        taken = {piece.key: float(minutes[at, draw]) for at, piece in enumerate(world.pieces)}
        outcome = one_draw(world.home, world.pieces, taken)
        stands = [outcome.where.get(piece.key, found.never) for piece in world.pieces]
        assert found.stands[:, draw].tolist() == stands
        assert found.over[:, draw].tolist() == list(outcome.over)


def test_small_plans_hold_all_there_is() -> None:
    """The random plans do put things off, let things fall off, wait, help and work in twos."""
    worlds = [World(seed) for seed in range(60)]
    assert any(piece.help for world in worlds for piece in world.pieces)
    assert any(step.wait_minutes for world in worlds for option in world.options for step in option.steps)
    assert any(option.one_day and len(option.steps) > 1 for world in worlds for option in world.options)
    ends = [_ends(world) for world in worlds]
    assert {True, False} <= {bool((one.stands == one.never).any()) for one in ends}
    assert any(bool(((one.stands > 0) & (one.stands < one.never)).any()) for one in ends)


def _ends(world: World) -> Played:
    return played(world.facts, world.turns, np.array([[float(piece.minutes)] for piece in world.pieces]))


@given(st.integers(0, 10**6), st.integers(1, 120))
def test_more_hours_in_the_last_session_never_lower_the_chance(seed: int, more: int) -> None:
    """Where everything found a session, it still does with more minutes in the last one.

    (Not so with an earlier one: what then fits there may keep out what could not stand later.)
    """
    world = World(seed)
    minutes = np.random.RandomState(seed).uniform(0.3, 2.5, (len(world.pieces), DRAWS))
    minutes *= np.array([[piece.minutes] for piece in world.pieces])
    last = world.facts.horizon - 1
    sessions = list(world.facts.problem.sessions or ())
    sessions[last] = replace(sessions[last], minutes=tuple(there + more for there in sessions[last].minutes))
    longer = Facts(replace(world.facts.problem, sessions=tuple(sessions)), world.facts.options, world.facts.horizon)
    before, after = (played(facts, world.turns, minutes) for facts in (world.facts, longer))
    fits = (before.stands != before.never).all(axis=0)
    assert bool((after.stands[:, fits] != after.never).all())


@pytest.mark.parametrize("seed", range(20))
def test_longer_steps_never_raise_the_chance_of_one_session(seed: int) -> None:
    """In a single session all fits with short minutes where it fits with long ones."""
    options = tuple(Option(f"o{at}", steps=(Step(30),)) for at in range(4))
    turns = tuple(alone(one.id) for one in options)
    facts = Facts.of(Problem(options, sessions=(Session(540, 700, (120,)),)))
    random = np.random.RandomState(seed)
    short = random.uniform(10, 40, (4, 500))
    long = short * random.uniform(1, 1.5, (4, 500))
    fits = [(played(facts, turns, minutes).stands == 0).all(axis=0) for minutes in (short, long)]
    assert bool((fits[0] | ~fits[1]).all())
    assert fits[0].sum() > fits[1].sum()
