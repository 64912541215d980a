"""Ways across the floor, checked against rooms that can be worked out by hand."""

from __future__ import annotations

import heapq
import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from budgetfix.room.places import WallLine, lines_of
from budgetfix.room.routes import Floor, Passing, floor_of, narrow_stretch, passes, widest_way
from budgetfix.room.survey import Wall
from budgetfix.room.zones import Ring, Zone, inside_door, near_piece

INCH = 25.4
C1 = Passing(36 * INCH, 32 * INCH, 24 * INCH, 48 * INCH)
HOME = Passing(810.0, 710.0, 610.0)


def room(width: float, length: float) -> tuple[dict[str, WallLine], Ring]:
    """A rectangular room: wall A is y = 0 and runs towards -x."""
    sizes = (width, length, width, length)
    lines = lines_of(tuple(Wall(wall=letter, length=size) for letter, size in zip("ABCD", sizes, strict=True)))
    return {line.letter: line for line in lines}, tuple(line.start for line in lines)


def box(x: float, y: float, wide: float, deep: float) -> Ring:
    """A rectangle by its corner nearest the origin."""
    return ((x, y), (x + wide, y), (x + wide, y + deep), (x, y + deep))


def corridor(wide: float, *pinches: tuple[float, float, float]) -> tuple[Floor, Zone, Zone]:
    """A corridor 8 m long with doors at both ends and (start, run, depth) blocks along one side."""
    lines, walls = room(wide, 8000.0)
    blocks = tuple(box(0.0, start, depth, run) for start, run, depth in pinches)
    return floor_of(walls, blocks), inside_door(lines["A"], 0.0, wide), inside_door(lines["C"], 0.0, wide)


def test_an_empty_corridor_is_as_wide_as_its_walls() -> None:
    """Between two bare walls 900 mm apart the widest disc is 900 mm across."""
    floor, start, end = corridor(900.0)
    assert widest_way(floor, start, end).width_mm == pytest.approx(900.0, abs=0.01)


def test_a_gap_between_two_things_is_measured_exactly() -> None:
    """Two cupboards leave 733 mm; that is the way, and its middle is where the gap is."""
    lines, walls = room(3000.0, 5000.0)
    floor = floor_of(walls, (box(0, 2400, 1000, 600), box(1733, 2400, 1267, 600)))
    way = widest_way(floor, inside_door(lines["A"], 1000, 800), inside_door(lines["C"], 1000, 800))
    assert way.width_mm == pytest.approx(733.0, abs=0.01)
    assert way.at is not None
    assert way.at[0] == pytest.approx(1366.5)


def test_a_gap_from_corner_to_corner_is_measured_across() -> None:
    """Corners 300 mm apart one way and 400 the other leave 500 mm."""
    lines, walls = room(3000.0, 5000.0)
    floor = floor_of(walls, (box(0, 1900, 1500, 600), box(1800, 2900, 1200, 600)))
    way = widest_way(floor, inside_door(lines["A"], 100, 900), inside_door(lines["C"], 100, 900))
    assert way.width_mm == pytest.approx(500.0, abs=0.01)


def test_the_wider_of_two_ways_counts() -> None:
    """An island leaves 900 mm on one side and 600 on the other: 900."""
    lines, walls = room(3000.0, 5000.0)
    floor = floor_of(walls, (box(600, 2000, 1500, 1000),))
    way = widest_way(floor, inside_door(lines["A"], 1000, 800), inside_door(lines["C"], 1000, 800))
    assert way.width_mm == pytest.approx(900.0, abs=0.01)


def test_no_way_at_all_is_zero() -> None:
    """A row of cupboards from wall to wall leaves no way."""
    lines, walls = room(3000.0, 5000.0)
    floor = floor_of(walls, (box(0, 2000, 1500, 600), box(1500, 2000, 1500, 600)))
    way = widest_way(floor, inside_door(lines["A"], 1000, 800), inside_door(lines["C"], 1000, 800))
    assert (way.width_mm, way.at) == (0.0, None)


def test_a_way_to_a_seat_ends_914_mm_before_it() -> None:
    """A sofa behind a 500 mm gap is reached through it; one that begins within 36 in of the door's zone is not."""
    lines, walls = room(3000.0, 6000.0)
    sofa = box(500, 5000, 2000, 900)
    floor = floor_of(walls, (sofa, box(0, 3000, 1250, 600), box(1750, 3000, 1250, 600)))
    door = inside_door(lines["A"], 1000, 800)
    assert widest_way(floor, door, near_piece(sofa, door)).width_mm == pytest.approx(500.0, abs=0.01)
    near = box(500, 1500, 2000, 900)
    clear = widest_way(floor_of(walls, (near,)), door, near_piece(near, door)).width_mm
    assert clear == pytest.approx(1400.0, abs=0.01), "it starts 700 mm inside the door and is there"


def test_a_way_may_start_on_the_line_between_two_things() -> None:
    """A box 700 mm before wall A: just there the widest disc stands between box and wall D, 1400 across."""
    lines, walls = room(3600.0, 4500.0)
    floor = floor_of(walls, (box(0, 1300, 880, 2100), box(1700, 700, 500, 300)))
    way = widest_way(floor, inside_door(lines["A"], 250, 800), inside_door(lines["C"], 1200, 800))
    assert way.width_mm == pytest.approx(1400.0, abs=0.01)


def test_a_way_in_a_room_with_a_corner_cut_out() -> None:
    """In an L-shaped room the inner corner and a chest 650 mm from it make the pinch."""
    walls = (("A", 4000, 90), ("B", 5000, 90), ("C", 2000, 90), ("D", 2000, -90), ("E", 2000, 90), ("F", 3000, 90))
    lines = lines_of(tuple(Wall(wall=name, length=size, turn=turn) for name, size, turn in walls))
    by = {line.letter: line for line in lines}
    ring = tuple(line.start for line in lines)
    floor = floor_of(ring, (box(0, 2600, 1350, 800),))
    way = widest_way(floor, inside_door(by["F"], 1000, 800), inside_door(by["C"], 600, 800))
    assert way.width_mm == pytest.approx(650.0, abs=0.01)


def test_a_slanted_piece_is_measured_exactly() -> None:
    """A square turned by 45 degrees with its tip 640 mm from the wall leaves 640 mm."""
    lines, walls = room(3000.0, 5000.0)
    half = 1000 / math.sqrt(2)
    tip = 640.0
    diamond = ((tip, 2500.0), (tip + half, 2500 - half), (tip + 2 * half, 2500.0), (tip + half, 2500 + half))
    filler = box(tip + half, 2000, 3000 - tip - half, 1000)
    way = widest_way(
        floor_of(walls, (diamond, filler)), inside_door(lines["A"], 1000, 800), inside_door(lines["C"], 1000, 800)
    )
    assert way.width_mm == pytest.approx(640.0, abs=0.5)


def test_a_short_pinch_is_let_pass_and_a_long_one_is_not() -> None:
    """At home 710 mm may last 610 mm; 611 mm or 709 mm may not."""
    assert passes(*corridor(900.0, (3000, 610, 190)), HOME)
    assert not passes(*corridor(900.0, (3000, 611, 190)), HOME)
    assert not passes(*corridor(900.0, (3000, 610, 191)), HOME)


def test_only_one_pinch_is_let_pass_at_home() -> None:
    """Two short pinches are one too many."""
    assert not passes(*corridor(900.0, (2000, 400, 150), (5000, 400, 150)), HOME)


def test_a_pinch_of_two_things_in_a_row_is_one_pinch() -> None:
    """Two chairs side by side narrow one stretch of 550 mm, not two."""
    assert passes(*corridor(900.0, (3000, 300, 150), (3300, 250, 150)), HOME)
    assert not passes(*corridor(900.0, (3000, 400, 150), (3400, 300, 150)), HOME)


@pytest.mark.parametrize(
    ("width", "pinches", "sound"),
    [
        (36.0, (), True),
        (35.9, (), False),
        (36.0, ((100.0, 30.0, 0.1),), False),
        (36.0, ((100.0, 24.0, 4.0),), True),
        (36.0, ((100.0, 24.1, 4.0),), False),
        (36.0, ((100.0, 24.0, 4.1),), False),
        (36.0, ((100.0, 24.0, 4.0), (172.0, 24.0, 4.0)), True),
        (36.0, ((100.0, 24.0, 4.0), (171.0, 24.0, 4.0)), False),
    ],
)
def test_c1_the_accessible_route(width: float, pinches: tuple[tuple[float, float, float], ...], sound: bool) -> None:
    """C1 and W1 (2010 ADA Standards 403.5.1), in inches: 36; 32 over at most 24; pinches 48 apart."""
    scaled = [(start * INCH, run * INCH, depth * INCH) for start, run, depth in pinches]
    assert passes(*corridor(width * INCH, *scaled), C1) is sound


def test_the_stretch_of_a_pinch_is_as_long_as_the_thing_that_makes_it() -> None:
    """A block 437 mm long in a corridor makes a pinch of 437 mm."""
    floor, _, _ = corridor(900.0, (3000, 437, 150))
    gap = min(floor.gaps, key=lambda gap: abs(gap.width_mm - 750))
    assert narrow_stretch(floor, gap, 810.0).length == pytest.approx(437.0, abs=0.1)


PIECES = st.lists(
    st.tuples(
        st.integers(0, 30), st.integers(0, 42), st.sampled_from((3, 5, 8, 12)), st.sampled_from((3, 4, 6, 9, 16))
    ),
    min_size=1,
    max_size=9,
)


def _furnished(pieces: list[tuple[int, int, int, int]], mirrored: bool = False) -> tuple[Floor, list[Zone]]:
    wide, long = 3600.0, 4500.0
    lines, walls = room(wide, long)
    sofa = box(0, 1300, 880, 2100)
    blocks = [sofa] + [box(100.0 * x, 100.0 * y, 100.0 * w, 100.0 * d) for x, y, w, d in pieces]
    doors = [("A", 250.0), ("C", 1200.0)]
    if mirrored:
        blocks = [tuple((wide - x, y) for x, y in block) for block in blocks]
        doors = [(wall, wide - at - 800.0) for wall, at in doors]
    zones = [inside_door(lines[wall], at, 800.0) for wall, at in doors]
    return floor_of(walls, tuple(blocks)), [*zones, near_piece(blocks[0], zones[0])]


@settings(max_examples=80, deadline=None)
@given(PIECES, st.data())
def test_lifting_a_piece_never_narrows_a_way(pieces: list[tuple[int, int, int, int]], data: st.DataObject) -> None:
    """Take any piece out of any room: every way is as wide as before, or wider, and stays sound if it was."""
    gone = data.draw(st.integers(0, len(pieces) - 1))
    floor, (hall, kitchen, seats) = _furnished(pieces)
    lifted, _ = _furnished([piece for at, piece in enumerate(pieces) if at != gone])
    for start, end in ((hall, kitchen), (hall, seats)):
        assert widest_way(lifted, start, end).width_mm >= widest_way(floor, start, end).width_mm - 1e-6
        if passes(floor, start, end, HOME):
            assert passes(lifted, start, end, HOME)


@settings(max_examples=40, deadline=None)
@given(PIECES)
def test_mirrored_rooms_have_the_same_ways(pieces: list[tuple[int, int, int, int]]) -> None:
    """Left and right do not matter."""
    floor, (hall, kitchen, _) = _furnished(pieces)
    other, (hall_m, kitchen_m, _) = _furnished(pieces, mirrored=True)
    mirrored = widest_way(other, hall_m, kitchen_m).width_mm
    assert mirrored == pytest.approx(widest_way(floor, hall, kitchen).width_mm, abs=1e-6)


@settings(max_examples=25, deadline=None)
@given(PIECES)
def test_ways_agree_with_a_fine_grid(pieces: list[tuple[int, int, int, int]]) -> None:
    """A grid of 25 mm, walked by brute force, finds a way no wider, and narrower by no more than its own mesh."""
    floor, (hall, kitchen, _) = _furnished(pieces)
    exact = widest_way(floor, hall, kitchen).width_mm
    rough = _by_grid(floor, hall, kitchen)
    assert rough <= exact + 2 * 5.0 * math.sqrt(2), "starts are tried 5 mm apart"
    assert exact - rough <= 2 * 25.0 * math.sqrt(2)


def _by_grid(floor: Floor, start: Zone, end: Zone, mesh: float = 25.0) -> float:
    """Widest way over grid points: always step on to the widest free neighbour, until one of the ends is reached."""
    xs, ys = np.arange(mesh / 2, 3600, mesh), np.arange(mesh / 2, 4500, mesh)
    grid = np.array([(x, y) for x in xs for y in ys])
    free = floor.clearance(grid).reshape(len(xs), len(ys)).tolist()

    def cells(zone: Zone) -> set[tuple[int, int]]:
        low, high = zone.points.min(axis=0), zone.points.max(axis=0)
        beside = [at for at, x in enumerate(xs) if low[0] <= x <= high[0]]
        return {(i, j) for j, y in enumerate(ys) if low[1] <= y <= high[1] for i in beside}

    starts, ends = cells(start), cells(end)
    queue = [(-free[i][j], i, j) for i, j in starts]
    heapq.heapify(queue)
    seen = set(starts)
    while queue:
        width, i, j = heapq.heappop(queue)
        if (i, j) in ends:
            return -2 * width
        for a, b in (
            (i + 1, j),
            (i - 1, j),
            (i, j + 1),
            (i, j - 1),
            *((i + c, j + d) for c in (-1, 1) for d in (-1, 1)),
        ):
            if 0 <= a < len(xs) and 0 <= b < len(ys) and (a, b) not in seen:
                seen.add((a, b))
                heapq.heappush(queue, (max(width, -free[a][b]), a, b))
    return 0.0
