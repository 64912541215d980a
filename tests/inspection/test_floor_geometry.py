"""Geometry of the floor as the trade page has it: door sweeps, ends of ways, pushed-in chairs, corners, sight lines.

Elsewhere: gaps and discs in `tests/room/test_routes.py`; one pinch charged once and three doors joined by two ways in
`test_scenarios.py`; C1 with its short pinches in `test_published_floors.py`; clear spans between what sticks out in
`test_wall_geometry.py`.
"""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import affinity
from shapely.geometry import LineString, Polygon, box

from budgetfix.inspection.look import Look
from budgetfix.inspection.rules.door_cannot_open import meets_at
from budgetfix.inspection.ways import ways
from budgetfix.room.items import Socket
from budgetfix.room.sides import straight_ways
from budgetfix.room.survey import Survey
from tests.inspection.rooms import room
from tests.inspection.test_published_floors import BY_SLUG, severity
from tests.inspection.turned import rebuilt

SIDE, LONG = 4000.0, 6000.0


def metric(**things: Any) -> Survey:
    """A room of 4 x 6 m."""
    return room("mm", (SIDE, LONG), {"ceiling": 2400.0, **things})


def measured(survey: Survey, slug: str, subject: str) -> float:
    """The figure that one rule finds on one subject."""
    found = BY_SLUG[slug].measure(Look(survey, "r"), subject)
    assert found is not None
    return found.value


BOXES = st.tuples(
    st.floats(-900.0, 900.0), st.floats(0.0, 900.0), st.floats(30.0, 900.0), st.floats(30.0, 900.0), st.floats(0, 90)
)


def _swept(shape: Polygon, leaf: float) -> float:
    """The first angle, in steps of a fifth of a degree, at which the leaf touches the shape; 90 where it does not."""
    for step in range(451):
        angle = math.radians(step / 5)
        if LineString([(0, 0), (leaf * math.cos(angle), leaf * math.sin(angle))]).intersects(shape):
            return step / 5
    return 90.0


@settings(max_examples=60, deadline=None, derandomize=True)
@given(BOXES, st.floats(600.0, 900.0))
def test_a_door_swings_as_a_sweep(placed: tuple[float, float, float, float, float], leaf: float) -> None:
    """Whatever stands there, straight or askew: the leaf meets it at the angle where a drawn leaf first touches it."""
    x, y, wide, deep, turn = placed
    shape = affinity.rotate(box(x, y, x + wide, y + deep), turn)
    if min(at[1] for at in shape.exterior.coords) < 0 or shape.contains(LineString([(0, 0), (1, 1)])):
        return
    corners = tuple((float(a), float(b)) for a, b in shape.exterior.coords[:-1])
    assert meets_at(corners, leaf) == pytest.approx(_swept(shape, leaf), abs=0.21)


@pytest.mark.parametrize(("hinge", "at", "angle"), [("left", 0.0, 64.89), ("right", 0.0, 90.0), ("left", 900.0, 90.0)])
def test_only_what_the_leaf_sweeps_counts(hinge: str, at: float, angle: float) -> None:
    """A crate 300 wide and 640 off the wall of an 800 door: met by its corner 300 along, or out of the leaf's reach."""
    door = {"name": "door", "wall": "A", "from_left": 1000.0, "width": 800.0, "hinge": hinge}
    crate = {"name": "crate", "what": "box", "plan": (SIDE - 1300.0 - at, 640.0, 300.0, 300.0), "height": 500.0}
    survey = metric(openings=[door], furniture=[crate])
    assert measured(survey, "door-cannot-open", "door") == pytest.approx(angle, abs=0.01)


def test_door_openings_themselves_are_left_out() -> None:
    """Two doors of 600 mm in a bare room: the way between them is not 600 but what a disc has 700 mm inside them."""
    doors = [
        {"name": "in", "wall": "A", "from_left": 1700.0, "width": 600.0},
        {"name": "out", "wall": "C", "from_left": 1700.0, "width": 600.0},
    ]
    survey = metric(openings=doors)
    assert measured(survey, "walkway-too-narrow", "in to out") == pytest.approx(1400.0, abs=0.1)
    assert severity(survey, "walkway-too-narrow", "in to out") == 0


SOFA = {"name": "sofa", "what": "sofa", "plan": (1000.0, 5000.0, 2000.0, 900.0), "height": 800.0, "faces": "A"}
DOOR = {"name": "in", "wall": "A", "from_left": 1600.0, "width": 800.0}


@pytest.mark.parametrize(("before_sofa", "narrow"), [(500.0, False), (1200.0, True)])
def test_a_way_ends_36_in_before_the_seat(before_sofa: float, narrow: bool) -> None:
    """Two cupboards 400 mm apart: so near to the sofa that one has arrived before them they count for nothing."""
    deep = 300.0
    start = 5000.0 - before_sofa - deep
    cupboards = [
        {"name": "one", "what": "cabinet", "plan": (0.0, start, 1800.0, deep), "height": 900.0},
        {"name": "two", "what": "cabinet", "plan": (2200.0, start, 1800.0, deep), "height": 900.0},
    ]
    survey = metric(openings=[DOOR], furniture=[SOFA, *cupboards])
    assert (measured(survey, "walkway-too-narrow", "in to seats") == pytest.approx(400.0)) is narrow


@pytest.mark.parametrize(("tucked", "wide"), [(True, 700.0), (False, 900.0)])
def test_dining_chairs_are_pushed_in(tucked: bool, wide: float) -> None:
    """Table to wall 900: a chair pushed in leaves what it sticks out; one left pulled out is pushed in for the walk."""
    table = {"name": "table", "what": "dining table", "plan": (0.0, 2500.0, 3100.0, 900.0), "height": 740.0}
    stands = (3100.0, 2700.0, 200.0, 450.0) if tucked else (3150.0, 2700.0, 500.0, 450.0)
    chair = {"name": "chair", "what": "dining chair", "plan": stands, "height": 880.0, "at": "table", "tucked": tucked}
    doors = [DOOR, {"name": "out", "wall": "C", "from_left": 1600.0, "width": 800.0}]
    found = ways(Look(metric(openings=doors, furniture=[table, chair]), "r"))
    assert found.between("in", "out").width_mm == pytest.approx(wide, abs=0.01)


def test_rugs_and_what_hangs_are_no_obstacles() -> None:
    """A rug from wall to wall and a shelf unit on brackets leave the way as it is."""
    doors = [DOOR, {"name": "out", "wall": "C", "from_left": 1600.0, "width": 800.0}]
    hung = {"name": "up", "what": "shelf unit", "plan": (0.0, 2500.0, 4000.0, 300.0), "height": 400.0, "hangs": True}
    rug = {"name": "rug", "plan": (0.0, 1000.0, 4000.0, 3000.0)}
    bare, full = (
        ways(Look(metric(openings=doors, **more), "r")).between("in", "out").width_mm
        for more in ({}, {"furniture": [hung], "rugs": [rug]})
    )
    assert full == bare


PIECES = st.lists(
    st.tuples(st.integers(0, 32), st.integers(0, 52), st.sampled_from((4, 6, 8)), st.sampled_from((3, 5, 9))),
    max_size=5,
)


def _largest_square(survey: Survey, step: float = 50.0) -> float:
    """Brute force: in each corner the largest square, 50 mm by 50 mm, that meets no piece, no door and no way."""
    look = Look(survey, "r")
    spots = [box(*bounds) for bounds in _plans(survey)]
    ways_of = straight_ways(look.openings(whats=("door", "opening")), look.lines)
    largest = 0.0
    for x, y in ((0.0, 0.0), (SIDE, 0.0), (0.0, LONG), (SIDE, LONG)):
        side = 0.0
        while side + step <= SIDE:
            grown = side + step
            square = box(min(x, abs(x - grown)), min(y, abs(y - grown)), max(x, abs(x - grown)), max(y, abs(y - grown)))
            inner = square.buffer(-0.01)
            if any(inner.intersects(one) for one in (*spots, *ways_of)):
                break
            side = grown
        largest = max(largest, side)
    return largest


def _plans(survey: Survey) -> list[tuple[float, float, float, float]]:
    look = Look(survey, "r")
    corners = [
        (one.wall, one.from_left, one.gap, one.from_left + one.width, one.gap + one.depth) for one in look.pieces()
    ] + [(one.wall, one.from_left, 0.0, one.from_left + one.width, one.width) for one in look.openings()]
    found = []
    for wall, left, near, right, far in corners:
        (ax, ay), (bx, by) = look.lines[wall].point(left, near), look.lines[wall].point(right, far)
        found.append((min(ax, bx), min(ay, by), max(ax, bx), max(ay, by)))
    return found


@settings(max_examples=40, deadline=None, derandomize=True)
@given(PIECES, st.integers(0, 30), st.integers(0, 30))
def test_the_free_square_of_a_corner(pieces: list[tuple[int, int, int, int]], one: int, other: int) -> None:
    """The largest empty corner, as squares drawn larger and larger find it: off furniture, doors and every way."""
    doors = [
        {"name": "in", "wall": "A", "from_left": 100.0 * one, "width": 800.0},
        {"name": "out", "wall": "C", "from_left": 100.0 * other, "width": 800.0},
    ]
    furniture = [
        {"name": f"p{at}", "what": "cabinet", "plan": (100.0 * x, 100.0 * y, 100.0 * w, 100.0 * d), "height": 900.0}
        for at, (x, y, w, d) in enumerate(pieces)
    ]
    survey = metric(openings=doors, furniture=furniture)
    exact, rough = measured(survey, "floor-left-empty", "room"), _largest_square(survey)
    assert rough - 0.1 <= exact <= rough + 50.1


@pytest.mark.parametrize(("left", "degrees"), [(1750.0, 0.0), (3000.0, 10.124), (200.0, 13.069)])
def test_sight_lines_run_from_the_eye_of_the_main_seat(left: float, degrees: float) -> None:
    """The eye is 300 mm before the sofa's back, 5600 from the screen's wall; jambs 1000 and 1300 beside its middle."""
    tv = {"name": "tv", "what": "screen", "wall": "A", "from_left": 1500.0, "width": 1000.0, "height": 560.0,
          "bottom": 700.0}  # fmt: skip
    window = {"name": "win", "what": "window", "wall": "A", "from_left": left, "width": 500.0, "bottom": 900.0,
              "top": 2000.0}  # fmt: skip
    survey = metric(furniture=[SOFA], pictures=[tv], openings=[window])
    assert measured(survey, "screen-glare", "tv") == pytest.approx(degrees, abs=0.001)


@pytest.mark.parametrize(("lead", "missing"), [(1300.0, 0.0), (1290.0, 10.0)])
def test_a_lead_is_measured_from_the_foot_to_its_socket(lead: float, missing: float) -> None:
    """From the middle of the foot, 500 off wall B, to a socket 1200 further on at the wall: 1300 mm, by Pythagoras."""
    lamp = {"name": "lamp", "what": "floor lamp", "plan": (400.0, 1000.0, 200.0, 200.0), "lead": lead}
    socket = Socket(name="socket", room="r", wall="B", from_left=2300.0)
    plugged = rebuilt(metric(lights=[lamp]), sockets=(socket,))
    assert measured(plugged, "lead-too-short", "lamp") == pytest.approx(missing, abs=0.01)
