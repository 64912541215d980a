"""What the rules about walls share: the wall a rod can have, rows and gaps of pictures, what stands beside a bench."""

from __future__ import annotations

from typing import Any

import pytest

from budgetfix.inspection.art import clear_of, gaps, group_of, piece_below, rows_of, stretch_of, widest_gap
from budgetfix.inspection.look import Look
from budgetfix.inspection.screens import bench_of, beside, degrees, eye_of, face, screens, seat_of
from budgetfix.inspection.windows import at_window, dressed, glass, wall_beside
from budgetfix.room.items import Hung
from budgetfix.room.survey import Survey
from tests.inspection.rooms import room, seen
from tests.inspection.wall_rooms import renter_walls, stager_walls


def look_at(survey: Survey) -> Look:
    """The one room of a survey."""
    return Look(survey, "r")


def hung(
    name: str, left: float, bottom: float, wide: float = 300.0, tall: float = 400.0, **more: Any
) -> dict[str, Any]:
    """A frame on wall B."""
    return {"name": name, "wall": "B", "from_left": left, "bottom": bottom, "width": wide, "height": tall, **more}


def art(*frames: dict[str, Any], **things: Any) -> Survey:
    """Frames in a room of 4 x 5 m."""
    return room("mm", (4000.0, 5000.0), {"ceiling": 2500.0, "pictures": frames, **things})


def wall_of(survey: Survey, name: str) -> tuple[float, float]:
    """Wall left and right of a window's frame that its rod can have."""
    look = look_at(survey)
    found = at_window(look, name)
    assert found is not None
    return wall_beside(look, *found, glass(look, *found))


def test_a_rod_has_the_wall_to_the_corner() -> None:
    """The renter's window: a metre to the left corner, 1200 to the right one; the radiator below stops nothing."""
    assert dressed(look_at(renter_walls())) == ("win",)
    assert wall_of(renter_walls(), "win") == pytest.approx((1000.0, 1200.0))


def test_two_dressed_windows_share_the_wall_between() -> None:
    """The stager's windows are 52 in apart: 26 in for each rod; with one rod alone it has the whole."""
    assert wall_of(stager_walls(), "win-1") == pytest.approx((28 * 25.4, 26 * 25.4))
    alone = stager_walls().model_copy(update={"curtains": stager_walls().curtains[:1]})
    assert wall_of(alone, "win-1") == pytest.approx((28 * 25.4, 52 * 25.4))


def test_a_shelf_and_a_tall_piece_end_the_wall() -> None:
    """A shelf 300 left of the frame and a bookcase round the corner, which takes 280 of the right."""
    survey = renter_walls()
    shelf = Hung(
        name="shelf", room="r", what="shelf", wall="C", from_left=100.0, width=600.0, height=30.0, bottom=1500.0
    )
    survey = survey.model_copy(update={"pictures": (*survey.pictures, shelf)})
    survey = seen(survey, "bookcase", wall="D", from_left=0.0, gap=0.0, faces="")
    left, right = wall_of(survey, "win")
    assert left == pytest.approx(300.0)
    assert right == pytest.approx(1200.0), "800 mm from the frame is farther than any cloth would ask for"
    assert wall_of(seen(survey, "curtain", stack=600.0), "win")[1] == pytest.approx(1200.0 - 280.0)


def test_rows_columns_and_grids_are_told_apart_from_free_hanging() -> None:
    """Two by two is a grid with four gaps; a frame that hangs across both rows makes it free."""
    four = [hung(f"f{at}", 1000.0 + 350 * (at % 2), 1500.0 - 480 * (at // 2), group="g") for at in range(4)]
    group = group_of(look_at(art(*four)), "g")
    assert group is not None
    assert [[frame.name for frame in row] for row in rows_of(group)] == [["f0", "f1"], ["f2", "f3"]]
    assert gaps(group) == pytest.approx((50.0, 50.0, 80.0, 80.0))
    assert widest_gap(group) == pytest.approx(80.0)
    free = group_of(look_at(art(*four, hung("odd", 1800.0, 1300.0, group="g"))), "g")
    assert free is not None
    assert rows_of(free) == ()
    assert gaps(free) == ()
    assert widest_gap(free) == pytest.approx(150.0)


def test_a_single_picture_is_no_row() -> None:
    """One frame has no rows, no gaps, and nothing to cross."""
    group = group_of(look_at(art(hung("one", 1000.0, 1400.0))), "one")
    assert group is not None
    assert (rows_of(group), gaps(group), widest_gap(group)) == ((), (), 0.0)


def test_the_clear_span_ends_at_what_sticks_out() -> None:
    """A wardrobe 900 wide in the left corner, a shelf from 3500: the picture between has 900 to 3500."""
    wardrobe = {"name": "wardrobe", "what": "wardrobe", "plan": (0, 0, 500, 900), "height": 2000.0, "faces": "D"}
    plant = {"name": "plant", "what": "plant", "plan": (1500, 1200, 300, 300), "height": 1900.0}
    shelf = hung("shelf", 3500.0, 1500.0, what="shelf", tall=30.0)
    survey = art(hung("one", 2000.0, 1400.0), shelf, furniture=[wardrobe, plant])
    group = group_of(look_at(survey), "one")
    assert group is not None
    assert clear_of(look_at(survey), group) == pytest.approx((900.0, 3500.0))
    high = seen(survey, "shelf", bottom=300.0)
    assert clear_of(look_at(high), group) == pytest.approx((900.0, 5000.0)), "a shelf far below the picture"


def test_a_piece_round_the_corner_sticks_out_too() -> None:
    """A bookcase at wall A beside the corner with B takes its depth of wall B, by the corner on B's left."""
    bookcase = {"name": "bookcase", "what": "bookcase", "plan": (0, 0, 800, 280), "height": 2000.0, "faces": "C"}
    survey = art(hung("one", 2000.0, 1400.0), furniture=[bookcase])
    look = look_at(survey)
    group, piece = group_of(look, "one"), look.piece("bookcase")
    assert group is not None
    assert piece is not None
    assert piece.wall == "A"
    assert stretch_of(look, piece, "B") == pytest.approx((0.0, 280.0))
    assert clear_of(look, group) == pytest.approx((280.0, 5000.0))


def test_the_piece_below_is_the_one_the_survey_names() -> None:
    """The renter's picture hangs over the sofa; the stager's screen over nothing."""
    look = look_at(renter_walls())
    group = group_of(look, "art")
    assert group is not None
    below = piece_below(look, group)
    assert below is not None
    assert below.name == "sofa"


def test_what_stands_beside_the_bench() -> None:
    """Within 24 in of the renter's bench: nothing but a seat, which is left out; 1.3 m away the shoe cabinet."""
    look = look_at(renter_walls())
    tv = look.hung_one("tv")
    assert tv is not None
    found = bench_of(look, tv)
    assert found is not None
    bench, stretch = found
    assert stretch == pytest.approx((1150.0, 2150.0))
    assert beside(look, "D", bench, 610.0) == ()
    assert [piece.name for piece, _ in beside(look, "D", bench, 1500.0)] == ["shoes"]


def test_where_the_eye_and_the_screens_face_are() -> None:
    """The renter's eye is 300 before the sofa's back; the screen's face over the middle of its bench."""
    look = look_at(renter_walls())
    seat, tv = seat_of(look), look.hung_one("tv")
    assert seat is not None
    assert tv is not None
    assert screens(look) == ("tv",)
    assert eye_of(look, seat) == pytest.approx((300.0, 2350.0))
    assert face(look, tv) == pytest.approx((3400.0, 2850.0))


@pytest.mark.parametrize(
    ("one", "other", "angle"), [((1, 0), (1, 0), 0.0), ((1, 0), (0, 1), 90.0), ((1, 0), (-1, 0), 180.0)]
)
def test_angles_between_directions(one: tuple[float, float], other: tuple[float, float], angle: float) -> None:
    """Straight on, square, and straight behind."""
    assert degrees(one, other) == pytest.approx(angle)


ONE = hung("one", 2400.0, 1400.0, wide=400.0)
WINDOW = {"name": "win", "what": "window", "wall": "B", "from_left": 300.0, "width": 1000.0, "bottom": 900.0,
          "top": 2100.0}  # fmt: skip
CLOTH = {"name": "cloth", "window": "win", "rod_height": 2200.0, "rod_from_left": 200.0, "rod_width": 1200.0,
         "panel_width": 1100.0, "hem": 10.0, "stack": 250.0}  # fmt: skip
BREAST = {"name": "breast", "what": "fireplace", "plan": (0.0, 3600.0, 300.0, 1200.0), "height": 2500.0, "faces": "D"}


@pytest.mark.parametrize(
    ("things", "span"),
    [
        ({}, (0.0, 5000.0)),
        ({"openings": [WINDOW]}, (1300.0, 5000.0)),
        ({"openings": [WINDOW], "curtains": [CLOTH]}, (1400.0, 5000.0)),
        ({"furniture": [BREAST]}, (0.0, 3600.0)),
        ({"openings": [WINDOW], "curtains": [CLOTH], "furniture": [BREAST]}, (1400.0, 3600.0)),
        ({"furniture": [{**BREAST, "height": 1300.0}]}, (0.0, 5000.0)),
    ],
)
def test_everything_that_sticks_out_ends_the_clear_span(things: dict[str, Any], span: tuple[float, float]) -> None:
    """Corners, a window's frame, the open cloth beside it, a chimney breast; what is lower than the picture is not."""
    look = look_at(art(ONE, **things))
    group = group_of(look, "one")
    assert group is not None
    assert clear_of(look, group) == pytest.approx(span)
