"""Remedies of the user's catalogue: fields as given, the rest sized, changes as they stand; and our own beside them."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from budgetfix.brief.models import Brief, Person
from budgetfix.catalog.models import Catalog, Product, Remedy, SetChange, WorkStep
from budgetfix.framing.options import barred, loud
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.inspect import look_at
from budgetfix.inspection.judging import blocks, judges
from budgetfix.inspection.registry import RULES
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.cares import CARES
from budgetfix.remedies.fit import candidates
from budgetfix.room.items import Light
from budgetfix.room.overlaps import overlaps
from budgetfix.room.survey import Survey
from tests.inspection.rooms import couple_living, renter, stager_living
from tests.remedies.bench import BRIEF, fields, product
from tests.remedies.test_screen_and_table_kinds import screened

ROD = product("p08", "rod", width=1600.0, width_to=3000.0)
PAIR = product("p10", "panels", width=1400.0, drop=2500.0, heading="eyelet", cloth="lined")
TAPE = product("p14", "hem tape")


def faults(survey: Survey) -> tuple[Finding, ...]:
    """All faults of the one room."""
    found = [one for block in blocks(("r",), judges(RULES, BRIEF)) for one in look_at(block, survey, BRIEF).findings]
    return tuple(one for one in found if one.fault)


def users(survey: Survey, *products: Product, **remedy: Any) -> Candidate:
    """A user's remedy m1 as a candidate."""
    catalog = Catalog(products=products, remedies=(Remedy.model_validate({"remedy": "m1", **remedy}),))
    (one,) = (one for one in candidates(survey, catalog, BRIEF, ()) if one.id == "m1")
    return one


def test_fields_are_set_exactly_as_given() -> None:
    """m07: rod at 2390 with the old curtains and a hem of 300, as typed; nothing is added to it."""
    given = {"rod_width": 1900.0, "rod_from_left": 750.0, "rod_height": 2390.0, "hem": 300.0}
    one = users(renter(), kind="longer-rod", on="curtain", set=tuple(given.items()), cost_minor=4200)
    assert fields(one, "curtain") == given
    assert (one.cost_minor, one.own, one.kind, one.hazards) == (4200, False, "longer-rod", ("drill", "ladder"))
    assert one.done_when != ""
    assert any("Before drilling" in care for care in one.cares)


@pytest.mark.parametrize(
    ("kind", "tools", "hazards"),
    [
        ("center-bed", ["drill"], ("lifting", "drill")),
        ("screen-strap", ["drill"], ("tipping", "drill")),
        ("move-piece", ["Ladder", "drill", "spirit level"], ("drill", "ladder")),
        ("longer-rod", ["ladder"], ("drill", "ladder")),
        (None, ["drill"], ("drill",)),
        (None, ["wrench"], ()),
    ],
)
def test_a_drill_among_the_tools_is_a_hazard(kind: str | None, tools: list[str], hazards: tuple[str, ...]) -> None:
    """Whatever its kind: whoever is told to take a drill is told to look for wires first, and of the ladder too."""
    one = users(renter(), kind=kind, tools=tuple(tools))
    assert one.hazards == hazards
    assert (CARES["drill"] in one.cares) == ("drill" in hazards)
    assert (CARES["ladder"] in one.cares) == ("ladder" in hazards)
    assert barred(Person(name="a", refuses=("drill",)), one) == ("drill" in hazards)
    assert loud(one) == ("drill" in hazards)


@pytest.mark.parametrize(
    ("more", "to", "wired"),
    [
        ({}, {"from_left": 1570.0}, True),
        ({}, {"from_left": 1950.0}, False),
        ({}, {"lumens": 400.0}, False),
        ({"lead": 1500.0}, {"from_left": 1570.0}, False),
        ({"what": "floor lamp"}, {"from_left": 1570.0}, False),
    ],
)
def test_a_wall_light_on_its_wires_that_moves_is_an_electricians(
    more: dict[str, Any], to: dict[str, float], wired: bool
) -> None:
    """Only where it gets another place, and only a light without a lead: a bulb, a plug-in and a floor lamp do not."""
    fields = {"name": "wall light", "room": "r", "wall": "B", "what": "wall light", "from_left": 1950.0, **more}
    room = renter()
    survey = room.model_copy(update={"lights": (*room.lights, Light.model_validate(fields))})
    one = users(survey, changes=(SetChange(item="wall light", set=tuple(to.items())),))
    assert ("wire" in one.hazards) == (CARES["wire"] in one.cares) == wired


def test_what_is_not_set_the_kind_sizes() -> None:
    """Only the rod's width is given: middle over the window, height and cloth follow from the products that it uses."""
    one = users(
        renter(), ROD, PAIR, TAPE, kind="longer-rod", on="curtain", set=(("rod_width", 1900.0),),
        uses=tuple((name, Fraction(1)) for name in ("p08", "p10", "p14")),
    )  # fmt: skip
    found = fields(one, "curtain")
    assert (found["rod_width"], found["rod_from_left"]) == (1900.0, 750.0)
    assert found.get("panel_width", 1400.0) == 1400.0


def test_nothing_set_means_all_is_sized() -> None:
    """A strap on the bookcase needs no fields; a table bought for the sofa is placed before it."""
    assert fields(
        users(renter(), product("s", "strap"), kind="strap", on="bookcase", uses=(("s", Fraction(2)),)), "bookcase"
    ) == {"fixed": True}
    table = product("t", "coffee table", width=1100.0, depth=600.0, height=420.0)
    one = users(renter(), table, kind="new-coffee-table", on="table", uses=(("t", Fraction(1)),))
    assert fields(one, "table")["height"] == 420.0


def test_the_screen_follows_its_bench() -> None:
    """A bench of 520 is set: the screen rises by 70, unless the remedy says itself where the screen goes."""
    bench = product("b", "console", width=1600.0, depth=420.0, height=520.0)
    size = (("height", 520.0), ("width", 1600.0))
    given: dict[str, Any] = {"kind": "wider-console", "on": "console", "set": size, "uses": (("b", Fraction(1)),)}
    followed = users(screened(), bench, **given)
    assert fields(followed, "screen") == {"bottom": 574.5}
    assert fields(followed, "console")["from_left"] == 950.0, "the armchair stands left of it"
    said = SetChange(item="screen", set=(("bottom", 600.0),))
    assert fields(users(screened(), bench, changes=(said,), **given), "screen") == {"bottom": 600.0}


def test_changes_are_applied_as_they_stand() -> None:
    """A lamp is added, the ceiling light is changed, the rug goes: three changes, word for word."""
    lamp = SetChange(
        table="lights", item="lamp", add=True,
        set=(("room", "r"), ("wall", "C"), ("from_left", 2310.0), ("gap", 330.0), ("what", "floor lamp")),
    )  # fmt: skip
    bulb = SetChange(item="ceiling", set=(("lumens", 1055.0),))
    one = users(renter(), kind="floor-lamp", on="armchair", changes=(lamp, bulb, SetChange(item="rug", remove=True)))
    after = renter().changed(one.changes)
    light = after.named["lamp"][1]
    assert isinstance(light, Light)
    assert light.what == "floor lamp"
    assert dict(after.named["ceiling"][1])["lumens"] == 1055.0
    assert "rug" not in after.named


def test_declared_reliefs_change_nothing() -> None:
    """Answers to listed faults only: no change to the room, the reliefs as typed."""
    one = users(renter(), kind="declared", answers=(("f1", Fraction(4, 5)),), steps=(WorkStep(minutes=25),))
    assert (one.changes, one.answers) == ((), (("f1", Fraction(4, 5)),))
    assert [work.minutes for work in one.work] == [25]


def test_a_remedy_without_a_survey_is_read_too() -> None:
    """faults.csv alone: the remedies stand, nothing of our own is added."""
    catalog = Catalog(remedies=(Remedy(remedy="m1", answers=(("f", Fraction(1)),)),), products=(ROD, PAIR))
    assert [one.id for one in candidates(None, catalog, Brief(), ())] == ["m1"]


@pytest.mark.parametrize("built", [renter, stager_living, couple_living])
def test_own_candidates_of_a_whole_room(built: Any) -> None:
    """All faults of an invented room: sorted ids that are unique, no two alike, no new overlap, the same every time."""
    survey = built()
    sold = Catalog(
        products=(ROD, PAIR, TAPE, product("straps", "strap"), product("rug-2", "rug", width=1580.0, depth=2280.0))
    )
    found = candidates(survey, sold, BRIEF, faults(survey))
    assert [one.id for one in found] == sorted({one.id for one in found})
    assert len({(one.changes, one.uses) for one in found}) == len(found) >= 8
    for one in found:
        assert set(overlaps(survey.changed(one.changes), "r")) <= set(overlaps(survey, "r")), one.id
    assert candidates(survey, sold, BRIEF, reversed(faults(survey))) == found


def test_our_own_twin_of_a_users_remedy_is_left_out() -> None:
    """The user already says: strap the bookcase with two of these. The same from us would only double the list."""
    straps = product("straps", "strap")
    remedy = Remedy(remedy="m18", kind="strap", on="bookcase", set=(("fixed", True),), uses=(("straps", Fraction(2)),))
    survey = renter()
    found = candidates(survey, Catalog(products=(straps,), remedies=(remedy,)), BRIEF, faults(survey))
    assert [one.id for one in found if "strap" in one.kind] == ["m18"]
