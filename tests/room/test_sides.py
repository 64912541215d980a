"""The four sides of a piece, and the floor ahead of them."""

from __future__ import annotations

import pytest
from shapely.geometry import box

from budgetfix.room.items import Opening, Piece
from budgetfix.room.places import lines_of
from budgetfix.room.sides import along, free_ahead, length, middle_of, ring, sides, span, straight_ways, strip
from budgetfix.room.survey import Wall

LINES = {
    line.letter: line
    for line in lines_of(
        tuple(Wall(wall=name, length=size) for name, size in zip("ABCD", (4000.0, 5000.0) * 2, strict=True))
    )
}
SOFA = Piece(name="sofa", what="sofa", wall="B", from_left=1000.0, width=2000.0, depth=900.0, height=800.0, gap=50.0)


def test_a_sofa_at_wall_b_looks_into_the_room() -> None:
    """Its front is 950 mm off wall B; its left side, as one sits in it, is the one nearer wall C."""
    its = sides(SOFA, LINES)
    assert its.look == (1.0, 0.0)
    assert {round(x) for x, _ in its.front} == {950}
    assert {round(x) for x, _ in its.back} == {50}
    assert {round(y) for _, y in its.left} == {1000}
    assert {round(y) for _, y in its.right} == {3000}
    assert (length(its.front), length(its.left)) == (2000.0, 900.0)


def test_the_floor_ahead_ends_at_the_first_thing() -> None:
    """A chest 700 mm before the front leaves 700; one beside the strip does not count; else the wall is met."""
    its, floor = sides(SOFA, LINES), box(0, 0, 4000, 5000)
    assert free_ahead(its.front, its.look, floor, [box(1650, 1500, 2000, 1800)], 5000.0) == 700.0
    assert free_ahead(its.front, its.look, floor, [box(1650, 3001, 2000, 3500)], 5000.0) == 3050.0
    assert free_ahead(its.front, its.look, floor, [box(1650, 1000, 2000, 1400)], 5000.0, share=0.5) == 3050.0
    assert free_ahead(its.front, its.look, floor, (), 1200.0) == 1200.0


def test_a_strip_is_as_wide_as_its_share() -> None:
    """The middle half of a 2000 mm front, 600 deep, covers 1000 x 600."""
    its = sides(SOFA, LINES)
    assert strip(its.front, its.look, 600.0, 0.5).area == pytest.approx(600_000)
    assert middle_of(its.front) == (950.0, 2000.0)
    across = sides(Piece(**{**dict(SOFA), "wall": "A"}), LINES)
    assert strip(across.front, across.look, 600.0, 0.5).bounds == (1500.0, 950.0, 2500.0, 1550.0)
    assert strip(its.front, its.look, 600.0, 0.25).bounds == (950.0, 1750.0, 1550.0, 2250.0)


def test_straight_ways_join_each_two_doors() -> None:
    """Three doors make three lines, each from 700 mm inside the doors."""
    doors = [Opening(name=name, wall=name, from_left=1000.0, width=800.0) for name in "ABC"]
    lines = straight_ways(doors, LINES)
    assert tuple(lines[0].coords) == ((2600.0, 700.0), (700.0, 1400.0))
    assert len(lines) == 3
    assert straight_ways([*doors, Opening(name="D", wall="Z", from_left=0.0, width=800.0)], LINES) == lines


def test_span_and_ring_are_plain_figures() -> None:
    """The sofa covers 50 to 950 mm from wall B, and 1000 to 3000 along it."""
    assert span(box(50, 1000, 950, 3000), (1.0, 0.0)) == (50.0, 950.0)
    assert along((3.0, 4.0), (0.0, -1.0)) == -4.0
    assert sorted(ring(SOFA, LINES)) == [(50.0, 1000.0), (50.0, 3000.0), (950.0, 1000.0), (950.0, 3000.0)]
