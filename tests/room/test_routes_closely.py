"""What ways across the floor are made of, looked at closely: faces, gaps, pinches and how long they are."""

from __future__ import annotations

import numpy as np
import pytest

from budgetfix.room.routes import Floor, floor_of, narrow_stretch, passes
from tests.room.test_routes import C1, INCH, box, corridor, room


def empty() -> Floor:
    """A bare room of 3 x 5 m; wall A is y = 0."""
    return floor_of(room(3000.0, 5000.0)[1], ())


def test_a_point_outside_is_in_no_face() -> None:
    """Told apart from every face, and from where a way starts and ends."""
    assert empty().face_of(np.array([[-10.0, 2000.0], [1500.0, 2000.0]])).tolist() == [-1, 0]
    assert empty().face_of(np.empty((0, 2))).tolist() == []


@pytest.mark.parametrize("point", [(0.0, 2000.0), (3000.0, 2000.0), (1500.0, 0.0), (1500.0, 5000.0)])
def test_a_point_at_a_wall_is_in_the_face_beside_it(point: tuple[float, float]) -> None:
    """With its rim a face holds what lies on each of its four walls; without, it does not."""
    assert empty().face_of(np.array([point]), rims=True).tolist() == [0]
    assert empty().face_of(np.array([point])).tolist() == [-1]


@pytest.mark.parametrize(("inwards", "neighbours"), [(0.0, True), (0.35, False), (50.0, False)])
def test_a_third_thing_in_the_disc_between_two_corners(inwards: float, neighbours: bool) -> None:
    """Corners 1,000 mm apart each way leave 1,414; a third corner on that disc touches it, further in it is nearer."""
    walls = room(10000.0, 10000.0)[1]
    third = box(3000.0 - inwards, 1500.0, 500.0, 500.0 + inwards)
    floor = floor_of(walls, (box(1000, 1000, 1000, 1000), box(3000, 3000, 1000, 1000), third))
    between = [gap for gap in floor.gaps if gap.middle == pytest.approx((2500.0, 2500.0))]
    assert [gap.width_mm for gap in between] == ([pytest.approx(1414.2136)] if neighbours else [])


def test_the_stretch_of_a_pinch_lies_where_the_thing_stands() -> None:
    """A chest 437 mm long, from 3000 on, along a corridor of 8 m in either direction of the room."""
    across = floor_of(room(8000.0, 900.0)[1], (box(3000, 0, 437, 150),))
    along, _, _ = corridor(900.0, (3000, 437, 150))
    for floor, axis in ((across, 0), (along, 1)):
        gap = min(floor.gaps, key=lambda gap: abs(gap.width_mm - 750))
        bounds = narrow_stretch(floor, gap, 810.0).bounds
        assert (bounds[axis], bounds[axis + 2]) == pytest.approx((3000.0, 3437.0), abs=0.6)


def test_a_pinch_that_opens_slowly_ends_where_it_is_wide_enough() -> None:
    """A bay 190 mm deep and 400 long whose flanks run out over 500 mm: 810 of 900 are free after 263 mm of a flank."""
    bay = ((0.0, 2500.0), (190.0, 3000.0), (190.0, 3400.0), (0.0, 3900.0))
    floor = floor_of(room(900.0, 8000.0)[1], (bay,))
    gap = min(floor.gaps, key=lambda gap: abs(gap.width_mm - 710))
    assert narrow_stretch(floor, gap, 810.0).length == pytest.approx(400 + 2 * 500 * 100 / 190, abs=1.5)


@pytest.mark.parametrize(("pinches", "sound"), [(4, True), (5, False)])
def test_four_pinches_on_one_way_are_looked_for(pinches: int, sound: bool) -> None:
    """Short ones, 48 in and more apart: as many as four; a way with more is called too narrow, on the safe side."""
    posts = [(1400.0 + 1325.0 * at, 100.0, 4.0 * INCH) for at in range(pinches)]
    assert passes(*corridor(36 * INCH, *posts), C1) is sound
