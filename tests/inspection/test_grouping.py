"""The seating group: how long its seat is, which tables stand before it, which rugs are its own."""

from __future__ import annotations

from typing import Any

import pytest

from budgetfix.inspection.grouping import rugs_of, seat_length, tables_before
from budgetfix.inspection.look import Look
from tests.inspection.rooms import room, seen

SOFA = {"name": "sofa", "what": "sofa", "plan": (1000.0, 0.0, 2000.0, 900.0), "height": 800.0, "faces": "C"}


def living(**things: Any) -> Look:
    """A room of 4 x 5 m with a sofa of 2,000 x 900 at wall A, from 1000 to 3000."""
    furniture = [SOFA, *things.pop("furniture", ())]
    return Look(room("mm", (4000.0, 5000.0), {"ceiling": 2500.0, "furniture": furniture, **things}), "r")


@pytest.mark.parametrize(
    ("what", "width", "inner"),
    [("sofa", 2000.0, 2000.0), ("corner sofa", 2700.0, 1800.0), ("corner sofa", 1600.0, 800.0)],
)
def test_how_long_a_seat_is(what: str, width: float, inner: float) -> None:
    """A corner sofa loses 900 mm to its arm, and never more than half of it."""
    look = living()
    sofa = look.piece("sofa")
    assert sofa is not None
    assert seat_length(look, sofa.model_copy(update={"what": what, "width": width})) == pytest.approx(inner)


@pytest.mark.parametrize(
    ("plan", "before"),
    [
        ((1500.0, 1300.0, 1000.0, 500.0), True),
        ((1500.0, 2120.0, 1000.0, 500.0), True),
        ((1500.0, 2121.0, 1000.0, 500.0), False),
        ((500.0, 1300.0, 501.0, 500.0), True),
        ((500.0, 1300.0, 500.0, 500.0), False),
        ((2999.0, 1300.0, 500.0, 500.0), True),
        ((3000.0, 1300.0, 500.0, 500.0), False),
        ((500.0, 300.0, 600.0, 600.0), False),
        ((500.0, 300.0, 600.0, 601.0), True),
    ],
)
def test_a_table_before_a_seat(plan: tuple[float, float, float, float], before: bool) -> None:
    """Some of it ahead of the front (900), within 1,220 mm (48 in), before some of the sofa's width."""
    look = living(furniture=[{"name": "table", "what": "coffee table", "plan": plan, "height": 420.0}])
    sofa = look.piece("sofa")
    assert sofa is not None
    assert [table.name for table in tables_before(look, sofa)] == (["table"] if before else [])
    astray = Look(seen(look.survey, "table", wall="Z"), "r")
    assert tables_before(astray, sofa) == ()


@pytest.mark.parametrize(
    ("y", "more", "own"),
    [(1000.0, {}, True), (2100.0, {}, True), (2200.0, {}, False), (1000.0, {"under": "table"}, False)],
)
def test_the_rugs_of_the_group(y: float, more: dict[str, Any], own: bool) -> None:
    """A rug that begins within 1,220 mm (48 in) of the sofa, and lies under no table of its own."""
    look = living(rugs=[{"name": "rug", "plan": (1000.0, y, 2000.0, 1400.0), **more}])
    assert [rug.name for rug in rugs_of(look)] == (["rug"] if own else [])
    assert rugs_of(Look(seen(look.survey, "sofa", wall="Z"), "r")) == ()


@pytest.mark.parametrize(("ahead", "near"), [(48.0, True), (48.2, False)])
def test_near_in_inches(ahead: float, near: bool) -> None:
    """In a home measured in inches both tables and rugs belong to the sofa up to 48 in from it."""
    sofa = {"name": "sofa", "what": "sofa", "plan": (40.0, 0.0, 80.0, 36.0), "height": 32.0, "faces": "C"}
    spot = (50.0, 36.0 + ahead, 40.0, 20.0)
    table = {"name": "table", "what": "coffee table", "plan": spot, "height": 17.0}
    things = {"ceiling": 96.0, "furniture": [sofa, table], "rugs": [{"name": "rug", "plan": spot}]}
    look = Look(room("in", (160.0, 200.0), things), "r")
    seat = look.piece("sofa")
    assert seat is not None
    assert [one.name for one in tables_before(look, seat)] == (["table"] if near else [])
    assert [rug.name for rug in rugs_of(look)] == (["rug"] if near else [])
