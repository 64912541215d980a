"""Where ways may start and end, and how far points are from things; by hand, and against shapely's distances."""

from __future__ import annotations

import math
import random

import numpy as np
import pytest
import shapely
from shapely.geometry import Polygon

from budgetfix.room.places import lines_of
from budgetfix.room.survey import Wall
from budgetfix.room.zones import (
    FAR_MM,
    NEAR_MM,
    REACH_MM,
    Ring,
    Zone,
    away_from,
    in_room,
    inside_door,
    near_piece,
    to_blocks,
    to_edges,
)

BOX: Ring = ((0.0, 0.0), (100.0, 0.0), (100.0, 50.0), (0.0, 50.0))
DIAMOND: Ring = ((0.0, -100.0), (100.0, 0.0), (0.0, 100.0), (-100.0, 0.0))
LINES = lines_of(tuple(Wall(wall=name, length=size) for name, size in zip("ABCD", (4000.0, 5000.0) * 2, strict=True)))


def points(*spots: tuple[float, float]) -> np.ndarray[tuple[int, int], np.dtype[np.float64]]:
    """Spots as rows."""
    return np.array(spots, dtype=np.float64)


def test_distance_to_an_upright_box() -> None:
    """Inside 0, beside it straight, off its corner by 3, 4 and 5."""
    spots = points((50.0, 25.0), (50.0, 90.0), (-20.0, 25.0), (130.0, 90.0), (-30.0, -40.0))
    assert to_blocks(spots, (BOX,)).tolist() == [0.0, 40.0, 20.0, 50.0, 50.0]


def test_distance_to_what_stands_askew() -> None:
    """A square on its corner: 0 inside, and half of the root of 2 away from where an upright box would be touched."""
    found = to_blocks(points((10.0, 20.0), (100.0, 100.0), (-100.0, 100.0), (150.0, 0.0)), (DIAMOND,))
    assert found.tolist() == pytest.approx([0.0, 100 / math.sqrt(2), 100 / math.sqrt(2), 50.0])


def test_the_nearest_of_several() -> None:
    """Upright and askew together; with nothing there it is endlessly far."""
    away: Ring = tuple((x + 1000.0, y) for x, y in BOX)
    spots = points((1050.0, 60.0), (-110.0, 0.0), (500.0, 25.0))
    assert to_blocks(spots, (BOX, DIAMOND, away)).tolist() == pytest.approx([10.0, 10.0, 400.0])
    assert to_blocks(spots, ()).tolist() == [math.inf] * 3


def test_as_shapely_has_it() -> None:
    """Fifty points about a box and a diamond, inside and out, to the last digit that counts."""
    draw = random.Random(7)
    spots = points(*((draw.uniform(-300, 300), draw.uniform(-300, 300)) for _ in range(50)))
    for ring in (BOX, DIAMOND):
        away = [Polygon(ring).distance(shapely.Point(*spot)) for spot in spots]
        assert to_blocks(spots, (ring,)).tolist() == pytest.approx(away)
        edges = [Polygon(ring).exterior.distance(shapely.Point(*spot)) for spot in spots]
        assert to_edges(spots, (ring,)).tolist() == pytest.approx(edges)
        assert away_from(Zone(spots), ring).tolist() == pytest.approx(away)


def test_a_corner_that_is_there_twice() -> None:
    """An edge without length is a point, and no division by nothing."""
    doubled: Ring = (BOX[0], *BOX)
    assert to_edges(points((-30.0, -40.0), (50.0, 20.0), (0.5, -10.0)), (doubled,)).tolist() == [50.0, 20.0, 10.0]


def test_a_way_starts_inside_its_door() -> None:
    """Between the jambs and 250 to 700 mm in: for a door at wall D, from its left at y = 4000 on."""
    spots = inside_door(LINES[3], 1000.0, 800.0).points
    assert (spots[:, 0].min(), spots[:, 0].max()) == (4000.0 - FAR_MM, 4000.0 - NEAR_MM)
    assert (spots[:, 1].min(), spots[:, 1].max()) == (3200.0, 4000.0)
    middle = spots[np.isclose(spots[:, 1], 3600.0)]
    assert {round(x) for x in middle[:, 0]} >= {3300, 3750}


def test_a_door_is_tried_every_5_mm_at_its_rims() -> None:
    """Along the jambs and along both lines from jamb to jamb; every 50 mm between them; the middle always."""
    spots = inside_door(LINES[0], 0.0, 800.0).points
    jamb, near = spots[spots[:, 0] == 4000.0][:, 1], spots[spots[:, 1] == NEAR_MM][:, 0]
    assert np.diff(np.unique(jamb)).tolist() == pytest.approx([5.0] * 90)
    assert np.diff(np.unique(near)).tolist() == pytest.approx([5.0] * 160)
    within = spots[np.isclose(spots[:, 1], 400.0)][:, 0]
    assert np.unique(within).tolist() == pytest.approx([3200.0 + 50.0 * at for at in range(17)])
    assert np.unique(inside_door(LINES[0], 0.0, 4.0).points[:, 0]).tolist() == [3996.0, 3998.0, 4000.0]


def test_a_way_ends_36_in_from_a_piece() -> None:
    """All around it on the line 914 mm away (36 in), no more than 10 mm from point to point; so are starts near it."""
    start = Zone(points((100.0, 500.0), (2000.0, 2000.0)))
    zone = near_piece(BOX, start)
    around, near = zone.parts
    assert near.points.tolist() == [[100.0, 500.0]]
    assert len(zone.points) == len(around.points) + 1
    away = to_blocks(around.points, (BOX,))
    assert (away.min(), away.max()) == pytest.approx((REACH_MM, REACH_MM), abs=0.2)
    steps = np.hypot(*(around.points - np.roll(around.points, 1, axis=0)).T)
    assert 0 < steps.min() <= steps.max() <= 10.0
    assert len(near_piece(BOX, Zone(points((2000.0, 2000.0)))).parts) == 1


def test_how_far_inside_a_room() -> None:
    """To the nearest wall; what is outside the room is not in it at all."""
    walls: Ring = ((0.0, 0.0), (4000.0, 0.0), (4000.0, 5000.0), (0.0, 5000.0))
    zone = Zone(points((300.0, 2500.0), (2000.0, 4900.0), (-50.0, 2500.0)))
    assert in_room(zone, walls).tolist() == [300.0, 100.0, 0.0]
