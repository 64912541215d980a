"""How far a size may differ: every size that is promised leaves the room no worse, and the next one beyond does."""

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction

import pytest

from budgetfix.catalog.models import Catalog, Product
from budgetfix.framing.frame import frame
from budgetfix.inspection.inspect import look_at_all
from budgetfix.optimize.problem import Plan
from budgetfix.outcome.accepts import FARTHEST, accepted
from budgetfix.outcome.set_by import sized_by
from budgetfix.remedies.candidate import Candidate
from budgetfix.room.overlaps import overlaps
from budgetfix.room.survey import Change, Survey
from tests.framing.small_jobs import measured_ground

RUG = Product(product="rug", name="Wool rug", label="160 x 240 cm", price_minor=9900)
PAD = Product(product="pad", name="Pad", label="150 x 220 cm", price_minor=900)
GROUND = measured_ground()
BASE = replace(GROUND, catalog=Catalog(products=(RUG, PAD)))
LAID: tuple[tuple[str, float], ...] = (("depth", 1600.0), ("from_left", 1300.0), ("gap", 700.0), ("width", 2400.0))
USERS = Candidate(
    "m1", "lay-rug", "A rug under the front feet", "rug", "r", changes=(Change("rugs", "rug", LAID),),
    uses=(("rug", Fraction(1)), ("pad", Fraction(1))),
)  # fmt: skip
FRAMED = frame(BASE, (USERS,), ())
PLAN = Plan(("m1",), (), 0, 0, 0, 0)


def room_with(**sizes: float) -> Survey:
    """The room with the rug laid in other sizes, its middle kept."""
    assert BASE.survey is not None
    fields = {**dict(LAID), **sizes}
    fields["from_left"] = 1300.0 - (fields["width"] - 2400.0) / 2
    return BASE.survey.changed([Change("rugs", "rug", tuple(sorted(fields.items())))])


def left(room: Survey) -> tuple[int, int]:
    """(hazard points, points), everything inspected anew."""
    seen = look_at_all(BASE.blocks, room, BASE.brief)
    return sum(one.hazards for one in seen), sum(one.points for one in seen)


def as_good(room: Survey) -> bool:
    """No more hazard points, points or overlaps than the planned room has."""
    planned = room_with()
    fine = all(now <= then for now, then in zip(left(room), left(planned), strict=True))
    return fine and set(overlaps(room, "r")) <= set(overlaps(planned, "r"))


def test_every_size_of_the_range_will_do_and_the_next_does_not() -> None:
    """Width and depth one by one, in the steps of the tape; where the trial's end is reached, nothing lies beyond."""
    words = accepted(BASE, FRAMED, PLAN, lambda: False)
    assert set(words) == {"rug"}
    found = re.fullmatch(r"width (\d+)(?: mm only| to (\d+) mm), depth (\d+)(?: mm only| to (\d+) mm)", words["rug"])
    assert found is not None, words
    for name, planned, low, high in (
        ("width", 2400.0, found[1], found[2] or found[1]),
        ("depth", 1600.0, found[3], found[4] or found[3]),
    ):
        assert int(low) <= planned <= int(high)
        for size in range(int(low), int(high) + 1, 5):
            assert as_good(room_with(**{name: float(size)})), (name, size)
        for beyond in (int(low) - 5, int(high) + 5):
            if abs(beyond - planned) <= planned * FARTHEST:
                assert not as_good(room_with(**{name: float(beyond)})), (name, beyond)


def test_nothing_is_said_where_it_is_not_clear_or_the_time_is_up() -> None:
    """No survey sizes from the tool's own kinds, no range after the clock, none for two tasks that share a product."""
    assert accepted(BASE, FRAMED, PLAN, lambda: True) == {}
    own = replace(FRAMED, candidates={"m1": replace(USERS, own=True)})
    assert accepted(BASE, own, PLAN, lambda: False) == {}
    said = replace(FRAMED, candidates={"m1": replace(USERS, accepts="any rug", accepts_of="rug")})
    assert accepted(BASE, said, PLAN, lambda: False) == {}
    assert accepted(replace(BASE, survey=None), FRAMED, PLAN, lambda: False) == {}


@pytest.mark.parametrize(
    ("label", "sizes", "fits"),
    [
        ("actual 158 x 228 cm (label 160 x 230)", {"width": 2280.0, "depth": 1580.0}, True),
        ("150 x 220 cm", {"width": 2280.0, "depth": 1580.0}, False),
        ("94 x 118 in", {"width": 2997.2, "depth": 2387.6}, True),
        ("160-300 cm, tube 25/28 mm", {"rod_width": 1900.0}, True),
        ("120-180 cm, tube 16/19 mm", {"rod_width": 1900.0}, False),
    ],
)
def test_a_label_tells_which_product_is_set(label: str, sizes: dict[str, float], fits: bool) -> None:
    """All sizes stand on the label, in its own unit; the tape beside it has none of them."""
    product = Product(product="p", name="A thing", label=label, price_minor=1)
    other = Product(product="q", name="Hem tape", label="10 m", price_minor=1)
    found = sized_by([product, other], "curtains" if "rod_width" in sizes else "rugs", sizes, "mm")
    assert (found is product) is fits
    rod = Product(product="r", name="Rod", width=1600.0, width_to=3000.0, price_minor=1)
    assert sized_by([rod, other], "curtains", {"rod_width": 1900.0}, "mm") is rod
    assert sized_by([rod], "rugs", {}, "mm") is None
