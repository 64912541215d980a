"""Stretches of wall: open cloth, and the clear span between what sticks out."""

from __future__ import annotations

import math
from typing import Any

import pytest

from budgetfix.room.items import Curtain, Opening, Piece
from budgetfix.room.places import WallLine, lines_of
from budgetfix.room.stretches import (
    along_wall,
    clear_span,
    cloth_of,
    lead_run,
    overlap,
    rod_ends,
    stack_of,
    wall_strip,
)
from budgetfix.room.survey import Wall


def curtain(**new: Any) -> Curtain:
    """A rod from 900 to 2500 with two panels of 1400."""
    fields = {"name": "c", "window": "w", "rod_height": 2300.0, "rod_from_left": 900.0, "rod_width": 1600.0}
    return Curtain.model_validate({**fields, "panel_width": 1400.0, "hem": 10.0, **new})


def lines() -> dict[str, WallLine]:
    """A rectangle of 4 x 5 m."""
    sides = zip("ABCD", (4000.0, 5000.0, 4000.0, 5000.0), strict=True)
    return {line.letter: line for line in lines_of(tuple(Wall(wall=letter, length=side) for letter, side in sides))}


@pytest.mark.parametrize(("cloth", "stack"), [("sheer", 252.0), ("lined", 308.0), ("blackout", 392.0)])
def test_open_cloth_takes_a_share_of_its_flat_width(cloth: str, stack: float) -> None:
    """0.18 for sheers, 0.22 lined, 0.28 blackout (common practice)."""
    assert stack_of(curtain(cloth=cloth)) == pytest.approx(stack)


def test_measured_cloth_is_believed() -> None:
    """What the tape said goes before what the share says; four panels are two on each side."""
    assert stack_of(curtain(stack=220.0)) == 220.0
    assert stack_of(curtain(panels=4)) == pytest.approx(616.0)
    assert stack_of(curtain(panels=3)) == stack_of(curtain(panels=2)) == stack_of(curtain(panels=1))


def test_open_cloth_stands_at_both_ends_of_the_rod() -> None:
    """Two panels stand at both ends, a single one at the left."""
    assert rod_ends(curtain()) == (900.0, 2500.0)
    assert cloth_of(curtain(stack=200.0)) == ((900.0, 1100.0), (2300.0, 2500.0))
    assert cloth_of(curtain(stack=200.0, panels=1)) == ((900.0, 1100.0),)


def test_the_clear_span_is_between_the_nearest_blocks() -> None:
    """Of two blocks on a side the nearer counts; without blocks the corners do; a block on the spot leaves nothing."""
    assert clear_span(4000.0, 2000.0, [(0.0, 300.0), (500.0, 900.0), (3000.0, 3200.0)]) == (900.0, 3000.0)
    assert clear_span(4000.0, 2000.0, []) == (0.0, 4000.0)
    assert clear_span(4000.0, 2000.0, [(1900.0, 2500.0)]) == (2000.0, 2000.0)
    assert clear_span(4000.0, 2000.0, [(2000.0, 2500.0)]) == (0.0, 2000.0)
    assert clear_span(4000.0, 2000.0, [(1500.0, 2000.0)]) == (2000.0, 4000.0)


def test_overlap_is_below_nothing_for_what_stands_apart() -> None:
    """Shared wall, touching, and 100 apart."""
    assert overlap((0.0, 500.0), (300.0, 900.0)) == 200.0
    assert overlap((0.0, 500.0), (500.0, 900.0)) == 0.0
    assert overlap((0.0, 500.0), (600.0, 900.0)) == -100.0


def test_a_piece_is_seen_from_any_wall() -> None:
    """A bookcase at wall A, in the corner with B: 800 along A, its depth along B, at which it touches too."""
    bookcase = Piece(name="b", what="bookcase", wall="A", from_left=3200.0, width=800.0, depth=280.0, height=2000.0)
    assert along_wall(bookcase, lines(), "A") == pytest.approx((3200.0, 4000.0, 0.0))
    assert along_wall(bookcase, lines(), "B") == pytest.approx((0.0, 280.0, 0.0))
    assert along_wall(bookcase, lines(), "D")[2] == pytest.approx(3200.0)


def test_a_strip_of_floor_along_a_wall() -> None:
    """The first metre of wall A from its left corner, 150 deep: its left corner is at x = 4000."""
    assert wall_strip(lines()["A"], (0.0, 1000.0), 150.0) == pytest.approx((3000.0, 0.0, 4000.0, 150.0))


@pytest.mark.parametrize(
    ("spot", "wall", "at", "run"),
    [
        ((3500.0, 300.0), "A", 1000.0, 800.0),  # 300 to wall A, 500 along it
        ((3500.0, 300.0), "D", 4600.0, 600.0),  # 500 to wall D, 100 back along it
        ((300.0, 300.0), "B", 1000.0, 1000.0),  # 300 to wall B and 700 along it, not straight across
        ((2000.0, 2500.0), "C", 2000.0, 2500.0),  # from the middle of the room straight to the wall with the socket
    ],
)
def test_a_lead_runs_along_the_walls(spot: tuple[float, float], wall: str, at: float, run: float) -> None:
    """Straight to a wall, then along the walls, the shorter way round: by hand in a room of 4 x 5 m."""
    assert lead_run(lines(), spot, wall, at) == pytest.approx(run)


def test_a_lead_does_not_pass_a_door() -> None:
    """From the left of a door in wall A to its right: round the whole room; with a door each way there is no run."""
    door = Opening(name="door", wall="A", from_left=1500.0, width=800.0)
    other = Opening(name="other", wall="C", from_left=1500.0, width=800.0)
    spot = (3000.0, 0.0)
    assert lead_run(lines(), spot, "A", 3000.0) == pytest.approx(2000.0)
    assert lead_run(lines(), spot, "A", 3000.0, (door,)) == pytest.approx(16000.0)
    assert lead_run(lines(), spot, "A", 3000.0, (door, other)) == math.inf


@pytest.mark.parametrize(("along", "run"), [(2000.0, 1000.0), (1850.0, 1150.0 + 2 * (9000.0 - 1150.0))])
def test_a_door_is_passed_at_its_middle(along: float, run: float) -> None:
    """A door from 1500 to 2300: who starts right of 1900 does not pass it, who starts left of it goes round the room.

    A door in a wall of another room is in nobody's way.
    """
    doors = tuple(Opening(name=wall, wall=wall, from_left=1500.0, width=800.0) for wall in "AZ")
    assert lead_run(lines(), (4000.0 - along, 0.0), "A", 3000.0, doors) == pytest.approx(run)


def notched() -> dict[str, WallLine]:
    """A room like an L: 4 x 5 m without the 2 x 2 m between walls D and E."""
    turns = (90.0, 90.0, 90.0, -90.0, 90.0, 90.0)
    lengths = (4000.0, 5000.0, 2000.0, 2000.0, 2000.0, 3000.0)
    sides = zip("ABCDEF", lengths, turns, strict=True)
    return {
        line.letter: line
        for line in lines_of(tuple(Wall(wall=name, length=size, turn=turn) for name, size, turn in sides))
    }


def test_a_lead_goes_to_the_nearest_wall() -> None:
    """100 from wall A and 100.5 from wall B, bound for wall D: 100 to A, 100.5 to the corner, all of B and C, 100 on.

    By wall B it would be 100 shorter, but leads are laid to the wall that is nearest.
    """
    assert lead_run(notched(), (100.5, 100.0), "D", 100.0) == pytest.approx(100.0 + 100.5 + 5000.0 + 2000.0 + 100.0)
    assert lead_run(notched(), (100.0, 100.0), "D", 100.0) == pytest.approx(100.0 + 4900.0 + 2000.0 + 100.0)


def test_a_wall_round_the_corner_is_no_wall_beside() -> None:
    """A spot of the long leg is not beside the walls of the notch, though in line with one.

    From 300 before wall A: 300 to it, 2100 to its left corner, 3000 along F and 1000 along E.
    """
    assert lead_run(notched(), (1900.0, 300.0), "E", 1000.0) == pytest.approx(6400.0)
