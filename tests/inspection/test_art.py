"""The picture that a light is for, and the piece that a picture hangs over."""

from __future__ import annotations

from typing import Any

import pytest

from budgetfix.inspection.art import group_of, lit_by, piece_below, widest_gap
from budgetfix.inspection.look import Look
from budgetfix.room.groups import picture_groups
from budgetfix.room.items import Hung
from tests.inspection.rooms import room, seen

SOFA = {"name": "sofa", "what": "sofa", "plan": (0.0, 1500.0, 900.0, 2000.0), "height": 800.0, "faces": "D"}


def frame(name: str, left: float, bottom: float, **more: Any) -> dict[str, Any]:
    """A frame of 400 x 300 on wall B."""
    return {"name": name, "wall": "B", "from_left": left, "bottom": bottom, "width": 400.0, "height": 300.0, **more}


def test_a_picture_hangs_over_nothing_that_has_no_place() -> None:
    """The sofa that the survey names is below it while it stands in this room."""
    survey = room("mm", (4000.0, 5000.0), {"ceiling": 2500.0, "furniture": [SOFA],
                                          "pictures": [frame("art", 2200.0, 1300.0, over="sofa")]})  # fmt: skip
    for wall, below in (("B", "sofa"), ("Z", None)):
        look = Look(seen(survey, "sofa", wall=wall), "r")
        group = group_of(look, "art")
        assert group is not None
        piece = piece_below(look, group)
        assert (None if piece is None else piece.name) == below


FRAMES = (
    frame("high", 1000.0, 1600.0),
    frame("low", 1000.0, 1000.0),
    frame("one", 3000.0, 1000.0, group="pair"),
    frame("two", 3000.0, 1400.0, group="pair"),
)


@pytest.mark.parametrize(
    ("lamp", "lit"),
    [
        ({"from_left": 1100.0}, "high"),
        ({"from_left": 1100.0, "bottom": 1590.0}, "low"),
        ({"from_left": 1100.0, "group": "pair"}, "pair"),
        ({"from_left": 1100.0, "over": "two"}, "pair"),
        ({"from_left": 1100.0, "group": "low"}, "low"),
        ({"from_left": 2000.0}, None),
        ({"from_left": 850.0}, "high"),
        ({"from_left": 849.0}, None),
        ({"from_left": 1250.0}, "high"),
        ({"from_left": 1251.0}, None),
        ({"from_left": 1100.0, "bottom": 1000.0}, None),
    ],
)
def test_which_picture_a_light_is_for(lamp: dict[str, Any], lit: str | None) -> None:
    """The one, or the group, that the survey names; else the highest that begins below it, over whose width it sits."""
    light = Hung.model_validate({**frame("lamp", 0.0, 1950.0, what="picture light"), "width": 300.0, **lamp})
    groups = picture_groups(tuple(Hung.model_validate(one) for one in FRAMES), True)
    found = lit_by(light, groups)
    assert (None if found is None else found.name) == lit


def test_the_widest_gap_is_crossed_once() -> None:
    """Three frames in a row, 50 and 200 apart: 200 must be crossed, whichever the survey names first."""
    row = [frame(name, left, 1000.0, group="row") for name, left in (("a", 1000.0), ("b", 1450.0), ("c", 2050.0))]
    for order in (row, row[::-1], [row[1], row[2], row[0]]):
        (group,) = picture_groups(tuple(Hung.model_validate(one) for one in order), True)
        assert widest_gap(group) == pytest.approx(200.0)
