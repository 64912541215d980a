"""Where things stand: walls as lines, footprints, what faces where; by hand in rooms of whole metres."""

from __future__ import annotations

import math

import pytest

from budgetfix.room.items import Curtain, Hung, Light, Opening, Piece
from budgetfix.room.places import bounds, closing_gap, extent, facing, footprint, lines_of, middle, turned
from budgetfix.room.survey import Wall

SIDES = (4000.0, 5000.0, 4000.0, 5000.0)


def walls(*lengths: float, turn: float = 90.0) -> tuple[Wall, ...]:
    """Walls from A on, each turning right by the same angle."""
    return tuple(Wall(wall="ABCDEF"[at], length=length, turn=turn) for at, length in enumerate(lengths))


LINES = {line.letter: line for line in lines_of(walls(*SIDES))}


def piece(wall: str, faces: str = "") -> Piece:
    """A sofa of 2000 x 900, 1000 from the left corner and 100 off its wall."""
    place = {"name": "sofa", "wall": wall, "from_left": 1000.0, "gap": 100.0}
    return Piece.model_validate(
        {**place, "what": "sofa", "width": 2000.0, "depth": 900.0, "height": 800.0, "faces": faces}
    )


def test_walls_that_close_have_no_gap() -> None:
    """A rectangle and a six-sided room close; without walls there is nothing to close."""
    assert closing_gap(walls(*SIDES)) == 0.0
    assert closing_gap(walls(*[1500.0] * 6, turn=60.0)) == pytest.approx(0.0, abs=1e-3)
    assert closing_gap(()) == 0.0


def test_the_gap_of_walls_that_do_not_close() -> None:
    """30 mm short along one wall and 40 along the next are 50 apart (the triangle of 3, 4 and 5)."""
    assert closing_gap(walls(4000.0, 5000.0, 3970.0, 4960.0)) == pytest.approx(50.0)


@pytest.mark.parametrize(
    ("wall", "faces", "look"),
    [
        ("A", "", (0.0, 1.0)),
        ("A", "A", (0.0, -1.0)),
        ("C", "C", (0.0, 1.0)),
        ("B", "", (1.0, 0.0)),
        ("B", "B", (-1.0, 0.0)),
        ("B", "C", (0.0, 1.0)),
        ("A", "D", (1.0, 0.0)),
        ("A", "Z", (0.0, 1.0)),
    ],
)
def test_where_a_piece_looks(wall: str, faces: str, look: tuple[float, float]) -> None:
    """Away from its wall, at its own wall, at another; a wall that is not there says nothing."""
    assert facing(piece(wall, faces), LINES) == look


def test_what_looks_along_its_wall_is_turned() -> None:
    """At wall A and looking at D its depth runs along the wall; looking at C or A it does not."""
    assert [turned(piece("A", faces), LINES) for faces in ("", "A", "B", "C", "D")] == [False, False, True, False, True]
    assert extent(piece("A", "D"), LINES) == (900.0, 2000.0)
    assert extent(piece("A"), LINES) == (2000.0, 900.0)


def test_a_six_sided_room() -> None:
    """Walls that meet at 120 degrees: whatever wall a piece looks at, it looks away from its own, and is not turned.

    The inner angles of a regular hexagon are 120 degrees, and opposite sides are its side times the root of 3 apart.
    """
    lines = {line.letter: line for line in lines_of(walls(*[1500.0] * 6, turn=60.0))}
    assert [turned(piece("A", faces), lines) for faces in "BCDEF"] == [False] * 5
    assert lines["A"].local(*lines["D"].start)[1] == pytest.approx(1500.0 * math.sqrt(3), abs=1e-3)


def test_footprints_and_middles() -> None:
    """From the left corner of wall A, which is at x = 4000, and of wall C, which is at x = 0."""
    assert footprint(piece("A"), LINES).bounds == (1000.0, 100.0, 3000.0, 1000.0)
    assert footprint(piece("C"), LINES).bounds == (1000.0, 4000.0, 3000.0, 4900.0)
    assert footprint(piece("D"), LINES).bounds == (3000.0, 2000.0, 3900.0, 4000.0)
    assert middle(piece("A"), LINES) == (2000.0, 550.0)
    assert middle(piece("D"), LINES) == (3450.0, 3000.0)


def test_the_floor_that_anything_at_a_wall_takes() -> None:
    """A frame as deep as it is, an opening as a line, a lamp by its foot; what has no wall here has no place."""
    frame = Hung(name="f", wall="A", from_left=500.0, width=700.0, depth=30.0)
    assert bounds(frame, LINES) == (2800.0, 0.0, 3500.0, 30.0)
    assert bounds(Opening(name="o", wall="D", from_left=500.0, width=800.0), LINES) == (4000.0, 3700.0, 4000.0, 4500.0)
    lamp = Light(name="l", wall="B", from_left=100.0, width=300.0, depth=200.0, gap=50.0)
    assert bounds(lamp, LINES) == (50.0, 100.0, 250.0, 400.0)
    curtain = Curtain(name="c", window="w", rod_height=1.0, rod_from_left=1.0, rod_width=1.0, panel_width=1.0, hem=0.0)
    assert bounds(curtain, LINES) is None
    assert bounds(Opening(name="o", wall="Z"), LINES) is None
    assert bounds(Light(name="l", wall="Z"), LINES) is None
