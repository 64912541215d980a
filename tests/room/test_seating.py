"""The seating group: which seat the room is judged from, where its eye is, and who sits around it."""

from __future__ import annotations

from typing import Any

import pytest

from budgetfix.room.items import Piece
from budgetfix.room.places import WallLine, lines_of
from budgetfix.room.seating import (
    angle_between,
    back_middle,
    eye,
    front_edge,
    front_middle,
    group,
    look_direction,
    main_seat,
)
from budgetfix.room.survey import Wall


def lines(width: float = 4000.0, length: float = 5000.0) -> dict[str, WallLine]:
    """A rectangle: B is x = 0, D is x = the width."""
    sides = zip("ABCD", (width, length, width, length), strict=True)
    return {line.letter: line for line in lines_of(tuple(Wall(wall=letter, length=side) for letter, side in sides))}


def seat(name: str, what: str = "sofa", **new: Any) -> Piece:
    """A seat at wall B, looking into the room."""
    fields = {"name": name, "what": what, "wall": "B", "from_left": 1500.0, "width": 2000.0, "depth": 900.0}
    return Piece.model_validate({**fields, "height": 800.0, **new})


def test_the_main_seat_is_the_marked_one_else_the_longest_sofa() -> None:
    """Marked before long, long before wide armchairs, and armchairs before nothing."""
    short, long = seat("short", width=1600.0), seat("long")
    chair = seat("chair", "armchair", width=2500.0)
    assert main_seat([short, long, chair]) == long
    assert main_seat([short, long, marked := seat("marked", "armchair", width=700.0, main=True)]) == marked
    assert main_seat([chair]) == chair
    assert main_seat([seat("desk chair", "desk chair")]) is None


def test_the_eye_is_12_in_before_the_back() -> None:
    """300 mm in a metric survey, 304.8 in inches; in the middle of the seat."""
    sofa = seat("sofa", gap=100.0)
    assert eye(sofa, lines()) == pytest.approx((400.0, 2500.0))
    assert eye(sofa, lines(), metric=False) == pytest.approx((404.8, 2500.0))


def test_front_and_back_of_a_seat() -> None:
    """A sofa at wall B looks along x: its front is 900 before its back."""
    sofa = seat("sofa")
    assert look_direction(sofa, lines()) == pytest.approx((1.0, 0.0))
    assert front_middle(sofa, lines()) == pytest.approx((900.0, 2500.0))
    assert back_middle(sofa, lines()) == pytest.approx((0.0, 2500.0))
    assert front_edge(sofa, lines()).length == pytest.approx(2000.0)


def test_a_seat_that_faces_another_wall() -> None:
    """A chair near wall B that looks at wall C: its front is the side towards C."""
    chair = seat("chair", "armchair", width=800.0, depth=700.0, faces="C")
    assert look_direction(chair, lines()) == pytest.approx((0.0, 1.0))
    assert front_middle(chair, lines()) == pytest.approx((400.0, 2200.0))


def test_the_group_is_within_8_ft_of_the_main_seat() -> None:
    """2440 mm from edge to edge belongs, 2450 does not; dining chairs never do."""
    sofa = seat("sofa")
    near = seat("near", "armchair", wall="D", width=800.0, depth=660.0, from_left=2100.0)
    far = seat("far", "armchair", wall="D", width=800.0, depth=650.0, from_left=2100.0)
    table = seat("dining", "dining chair", from_left=3600.0)
    assert [one.name for one in group([sofa, near, table], lines())] == ["near", "sofa"]
    assert [one.name for one in group([sofa, far], lines())] == ["sofa"]
    assert group([], lines()) == ()
    assert group([seat("sofa", wall="Z"), near], lines()) == ()


def test_angles() -> None:
    """Square, straight behind, and no direction at all."""
    assert angle_between((1.0, 0.0), (0.0, 2.0)) == pytest.approx(90.0)
    assert angle_between((1.0, 0.0), (-3.0, 0.0)) == pytest.approx(180.0)
    assert angle_between((0.0, 0.0), (1.0, 0.0)) == 0.0
