"""Sizes that would do as well: at both ends nothing is worse, a step beyond something is, inspected anew."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from budgetfix.catalog.models import Product
from budgetfix.optimize.problem import Plan
from budgetfix.outcome.accepts import BETWEEN, FARTHEST, METRIC_STEP_MM, accepted
from budgetfix.outcome.set_by import sized_by
from budgetfix.pipeline.candidates import offered
from budgetfix.pipeline.inspecting import inspected
from budgetfix.room.items import Rug, Table
from budgetfix.room.overlaps import overlaps
from budgetfix.room.survey import Change, Survey
from tests.scenarios import RENTER, run

RANGE = re.compile(r"(width|depth) (\d+) to (\d+) mm")


def rug_room() -> tuple[Survey, Rug]:
    """The renter's room as the plan leaves it, and the new rug in it."""
    book = run("renter").book
    assert book.drawn is not None
    rug = book.drawn.after.named["rug"][1]
    assert isinstance(rug, Rug)
    return book.drawn.after, rug


def left_with(room: Survey, rug: Rug, **sizes: float) -> tuple[int, int]:
    """(hazard points, points) that a whole inspection finds with a rug of other sizes, its middle kept."""
    wider = sizes.get("width", rug.width) - rug.width
    fields = {**sizes, "from_left": rug.from_left - wider / 2}
    changed = room.changed([Change("rugs", "rug", tuple(sorted(fields.items())))])
    seen = inspected(replace(run("renter").job, survey=changed))
    return seen.hazard_points, seen.points


@RENTER
def test_the_rug_may_be_as_small_and_as_large_as_it_says() -> None:
    """Each size alone, and both at once: at the ends no more is left than the plan leaves; a step beyond, more is."""
    room, rug = rug_room()
    line = next(line for line in run("renter").book.money if line.product == "p01")
    ranges = {name: (float(low), float(high)) for name, low, high in RANGE.findall(line.accepts)}
    assert set(ranges) == {"width", "depth"}
    planned = left_with(room, rug)
    assert planned == (run("renter").book.hazard_points_after, run("renter").book.points_after)
    for name, ends in ranges.items():
        size = getattr(rug, name)
        for end, step in zip(ends, (-METRIC_STEP_MM, METRIC_STEP_MM), strict=True):
            assert _no_worse(left_with(room, rug, **{name: end}), planned)
            if abs(end + step - size) <= FARTHEST * size and not _on_another(room, rug, name, end + step):
                assert not _no_worse(left_with(room, rug, **{name: end + step}), planned)
    for width in ranges["width"]:
        for depth in ranges["depth"]:
            assert _no_worse(left_with(room, rug, width=width, depth=depth), planned)


def _no_worse(left: tuple[int, int], planned: tuple[int, int]) -> bool:
    return left[0] <= planned[0] and left[1] <= planned[1]


def _on_another(room: Survey, rug: Rug, name: str, size: float) -> bool:
    """True where a rug of that size would lie on something that it must not lie on."""
    changed = room.changed([Change("rugs", "rug", ((name, size),))])
    return set(overlaps(changed, rug.room)) != set(overlaps(room, rug.room))


@RENTER
def test_what_there_is_no_time_for_is_left_out() -> None:
    """A clock that has run out leaves every range open, and says nothing wrong instead."""
    planned = run("renter")
    chosen = tuple(sorted(planned.ids))
    plan = Plan(chosen, (), 0, 0, 0, 0)
    framed = offered(planned.before.base).framed
    assert accepted(planned.before.base, framed, plan, lambda: True) == {}
    assert BETWEEN > 1


@pytest.mark.parametrize(
    ("label", "sizes", "unit", "found"),
    [
        ("actual 158 x 228 cm", {"width": 2280.0, "depth": 1580.0}, "mm", True),
        ("8 x 10", {"width": 2032.0, "depth": 2540.0}, "in", False),
        ("60 x 40", {"width": 1524.0, "depth": 1016.0}, "in", True),
        ("160-300 cm", {"rod_width": 1900.0}, "mm", True),
        ("160-180 cm", {"rod_width": 1900.0}, "mm", False),
        ("", {}, "mm", False),
    ],
)
def test_a_product_is_the_thing_that_its_label_says(
    label: str, sizes: dict[str, float], unit: str, found: bool
) -> None:
    """Sizes on the label, in its own unit or the survey's, make it the thing that is set; two alike do not."""
    one = Product(product="p", price_minor=1, label=label)
    other = Product(product="q", price_minor=1, label="screws")
    table: Table = "curtains" if "rod_width" in sizes else "rugs"
    assert (sized_by((one, other), table, sizes, unit) == one) is found
    twin = Product(product="r", price_minor=1, label=label)
    assert sized_by((one, twin, other), table, sizes, unit) is None
