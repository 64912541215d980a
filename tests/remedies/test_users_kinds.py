"""A remedy of the user's own that names a kind and a thing, and sets nothing: the kind sizes it, finding or not."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from budgetfix.catalog.models import Product
from budgetfix.room.items import Hung
from budgetfix.room.survey import Survey
from tests.inspection.rooms import couple_living, renter
from tests.remedies.bench import added, altered, fields, product
from tests.remedies.test_across_and_frame_kinds import lamp, small
from tests.remedies.test_floor_filling_kinds import dining, survey_without_cabinet
from tests.remedies.test_screen_place_kinds import high, sideways
from tests.remedies.test_users_remedies import users
from tests.remedies.test_wall_kinds import holed, with_holes
from tests.remedies.test_wired_light_kinds import over


@pytest.mark.parametrize(
    ("survey", "kind", "on", "sold", "item", "wanted"),
    [
        (high(), "lower-screen", "screen", (), "screen", {"bottom": 765.0}),
        (sideways(), "slide-screen", "screen", (), "console", None),
        (over(bottom=1700.0), "pendant-cord", "pendant", (), "pendant", {"bottom": 1555.0}),
        (over(from_left=2000.0), "electrician", "pendant", (product("v", "electrician visit"),), "pendant",
         {"from_left": 2550.0, "gap": 5100.0, "bottom": 1555.0}),
        (over(bottom=1760.0), "deeper-shade", "pendant", (product("s", "shade", height=350.0),), "pendant",
         {"bottom": 1610.0}),
        (lamp(small()), "picture-light", "lamp", (), "lamp", {"from_left": 2200.0, "width": 300.0, "bottom": 1845.0}),
        (with_holes(holed("one", 3), holed("two", 2, wall="D")), "fill-holes", "two", (), "two", {"things": 0}),
        (altered(renter(), "desk", things=9), "clear-surface", "desk", (), "desk", {"things": 3}),
        (altered(renter(), "desk", cables=900.0), "tie-cables", "desk", (), "desk", {"cables": 0.0}),
        (dining(), "rug-under", "under", (product("big", "rug", width=2980.0, depth=2380.0),), "under", None),
        (couple_living(), "spare-chair", "dining", (), "ch1", None),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)  # fmt: skip
def test_a_users_remedy_is_sized_without_a_finding(
    survey: Survey, kind: str, on: str, sold: tuple[Product, ...], item: str, wanted: dict[str, Any] | None
) -> None:
    """Named by the user, on a thing that may have no fault at all: the changes are there, on that thing first."""
    one = users(survey, *sold, kind=kind, on=on, uses=tuple((each.product, Fraction(1)) for each in sold))
    assert one.own is False
    assert one.changes
    assert fields(one, item)
    assert wanted is None or fields(one, item) == wanted


def test_a_users_landing_uses_what_the_user_names() -> None:
    """A mat named by the user is laid at the front door, though nothing was found there."""
    mat = product("mat", "mat", width=750.0, depth=450.0)
    one = users(survey_without_cabinet(), mat, kind="hooks-and-mat", on="front-door", uses=(("mat", Fraction(1)),))
    assert [change.item for change in one.changes] == ["mat at the front-door"]


def test_only_the_patch_that_is_named_is_filled() -> None:
    """Two patches, one of them named."""
    survey = added(renter(), "pictures", holed("here", 3), holed("there", 2, wall="D"))
    one = users(survey, kind="fill-holes", on="there")
    assert [change.item for change in one.changes] == ["there"]
    assert isinstance(survey.named["here"][1], Hung)
