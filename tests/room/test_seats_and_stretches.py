"""The seating group, groups of pictures, and stretches of wall."""

from __future__ import annotations

import pytest

from budgetfix.room.groups import picture_groups
from budgetfix.room.items import Curtain, Hung, Piece
from budgetfix.room.places import lines_of
from budgetfix.room.seating import angle_between, eye, front_middle, group, main_seat
from budgetfix.room.stretches import clear_span, cloth_of, overlap, stack_of
from budgetfix.room.survey import Wall

LINES = {
    line.letter: line
    for line in lines_of(tuple(Wall(wall=w, length=size) for w, size in zip("ABCD", (4000.0, 5000.0) * 2, strict=True)))
}
SOFA = Piece(name="sofa", what="sofa", wall="B", from_left=1000.0, width=2000.0, depth=900.0, height=800.0)
CHAIR = Piece(name="chair", what="armchair", wall="D", from_left=2000.0, width=800.0, depth=800.0, height=800.0)
STOOL = Piece(name="far", what="armchair", wall="C", from_left=3200.0, width=700.0, depth=700.0, height=800.0)


def test_the_main_seat_is_the_marked_one_else_the_longest_sofa() -> None:
    """A marked armchair beats a sofa; without a mark the sofa counts; no seat, no main seat."""
    marked = Piece.model_validate({**dict(CHAIR), "main": True})
    assert main_seat((SOFA, marked)) == marked
    assert main_seat((CHAIR, SOFA)) == SOFA
    assert main_seat(()) is None


def test_the_eye_is_a_foot_before_the_seats_back() -> None:
    """The sofa stands on wall B (x = 0): its front is 900 off the wall, the eye 300 (12 in)."""
    assert front_middle(SOFA, LINES) == (900.0, 2000.0)
    assert eye(SOFA, LINES) == pytest.approx((300.0, 2000.0))


def test_the_group_reaches_eight_feet() -> None:
    """The chair across is 2.3 m away and belongs to it; the one in the far corner is 2.8 m away and does not."""
    assert [seat.name for seat in group((SOFA, CHAIR, STOOL), LINES)] == ["chair", "sofa"]


def test_angles_between_directions() -> None:
    """Straight ahead 0, square 90, opposite 180."""
    assert angle_between((1, 0), (0, 2)) == pytest.approx(90)
    assert angle_between((1, 0), (-3, 0)) == pytest.approx(180)


def hung(name: str, left: float, **more: object) -> Hung:
    """A frame of 400 by 500, lower edge at 1200."""
    fields = {"name": name, "wall": "A", "from_left": left, "width": 400.0, "height": 500.0, "bottom": 1200.0, **more}
    return Hung.model_validate(fields)


def test_frames_four_inches_apart_are_one_group_unless_they_are_named() -> None:
    """90 mm apart they join under the first one's name, 110 apart they do not; named ones keep their name."""
    near = picture_groups((hung("a", 0.0), hung("b", 490.0)), metric=True)
    far = picture_groups((hung("a", 0.0), hung("b", 510.0)), metric=True)
    named = picture_groups((hung("a", 0.0, group="row"), hung("b", 900.0, group="row")), metric=True)
    assert [(one.name, len(one.frames)) for one in near] == [("a", 2)]
    assert [one.name for one in far] == ["a", "b"]
    assert [(one.name, one.width) for one in named] == [("row", 1300.0)]


def test_open_cloth_as_measured_or_by_the_panel() -> None:
    """22 % of a lined panel's flat width (common practice), unless somebody measured it."""
    plain = Curtain(
        name="c", window="w", rod_height=2200.0, rod_from_left=500.0, rod_width=2000.0, panel_width=1400.0, hem=10.0
    )
    assert stack_of(plain) == pytest.approx(308.0)
    measured = Curtain.model_validate({**dict(plain), "stack": 250.0})
    assert cloth_of(measured) == ((500.0, 750.0), (2250.0, 2500.0))


def test_the_clear_span_lies_between_what_sticks_out() -> None:
    """A shelf to 600 and cloth from 3000 leave 600 to 3000; what covers the point leaves nothing."""
    assert clear_span(4000.0, 2000.0, ((0.0, 600.0), (3000.0, 3400.0))) == (600.0, 3000.0)
    assert clear_span(4000.0, 2000.0, ((1900.0, 2100.0),)) == (2000.0, 2000.0)
    assert overlap((0.0, 10.0), (4.0, 20.0)) == 6.0
