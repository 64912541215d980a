"""Three invented rooms: each fault that was put there on purpose is named, and the ways are as wide as stated."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from budgetfix.brief.models import Brief
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.inspect import look_at
from budgetfix.inspection.judging import blocks, judges
from budgetfix.inspection.look import Look
from budgetfix.inspection.registry import RULES
from budgetfix.inspection.ways import Ways, ways
from budgetfix.room.survey import Survey
from tests.inspection.rooms import couple_bedroom, couple_living, renter, room, seen, stager_bedroom, stager_living

INCH = 25.4


def faults(survey: Survey, brief: Brief | None = None) -> dict[str, Finding]:
    """Every fault of a room by its id."""
    brief = brief or Brief()
    found: dict[str, Finding] = {}
    for block in blocks(["r"], judges(RULES, brief)):
        found |= {finding.id: finding for finding in look_at(block, survey, brief).findings if finding.fault}
    return found


def widest(survey: Survey, *pairs: tuple[str, str]) -> list[float]:
    """The widest ways of a room, in millimetres."""
    found: Ways = ways(Look(survey, "r"))
    return [found.between(one, two).width_mm for one, two in pairs]


PURPOSE: tuple[tuple[Callable[[], Survey], tuple[str, ...]], ...] = (
    (
        renter,
        (
            "rug-across/rug",
            "rug-misses-seats/rug",
            "rug-shorter-than-sofa/rug",
            "rug-slides/rug",
            "table-out-of-reach/table",
            "table-off-length/table",
            "door-cannot-open/door-hall",
            "one-light-only/room",
            "room-dim/room",
            "seat-dim-for-reading/armchair",
            "tall-piece-loose/bookcase",
            "curtain-near-heater/curtain",
        ),
    ),
    (
        stager_living,
        (
            "rug-misses-seats/rug",
            "table-out-of-reach/table",
            "all-against-walls/seating group",
            "seats-too-far-apart/chair-1",
            "seats-too-far-apart/chair-2",
            "one-light-only/room",
            "room-dim/room",
            "lamp-colors-mixed/room",
            "tall-piece-loose/cabinet",
        ),
    ),
    (
        stager_bedroom,
        (
            "bed-side-tight/bed",
            "front-blocked/win-b",
            "nightstand-off-height/stand",
            "bed-headless/bed",
            "bed-lopsided/bed",
            "tall-piece-loose/dresser",
            "one-light-only/room",
            "room-dim/room",
        ),
    ),
    (
        couple_living,
        (
            "curtain-near-heater/curtain-front",
            "rug-misses-seats/rug",
            "rug-slides/rug",
            "table-out-of-reach/table",
            "walkway-too-narrow/door-hall to door-kitchen",
            "chairs-boxed-in/dining",
            "front-blocked/sideboard",
            "pendant-off-height/pendant",
            "pendant-off-center/pendant",
            "tall-piece-loose/bookcase",
            "tall-piece-loose/sideboard",
            "cord-in-reach/win-dining",
            "cable-across-route/floor lamp",
        ),
    ),
    (
        couple_bedroom,
        (
            "tall-piece-loose/wardrobe",
            "tall-piece-loose/chest",
            "bed-side-tight/bed",
            "front-blocked/win-bed",
            "nightstand-off-height/stand-1",
            "bed-lopsided/bed",
        ),
    ),
)


@pytest.mark.parametrize(("built", "wanted"), PURPOSE, ids=[built.__name__ for built, _ in PURPOSE])
def test_every_fault_put_there_on_purpose_is_named(built: Callable[[], Survey], wanted: tuple[str, ...]) -> None:
    """What a practitioner would name on the first walk through, the rules name too."""
    assert [fault for fault in wanted if fault not in faults(built())] == []


def test_one_pinch_is_charged_once() -> None:
    """The couple's pinch lies on two ways, from the kitchen to the hall and to the seats: one finding."""
    narrow = [name for name in faults(couple_living()) if name.startswith("walkway")]
    assert narrow == ["walkway-too-narrow/door-hall to door-kitchen"]


def test_the_renters_ways_before_and_after() -> None:
    """99, 103 and 109 cm; after the shoe cabinet and the coffee table have moved 99, 105 and 109."""
    pairs = (("door-hall", "door-kitchen"), ("door-hall", "seats"), ("door-kitchen", "seats"))
    before = seen(renter(), "fan heater", hangs=True)
    assert widest(before, *pairs) == pytest.approx([990, 1030, 1090], abs=20)
    after = seen(seen(before, "shoes", from_left=before_shoes(before) - 500), "table", from_left=3600 - 1280 - 500)
    assert widest(after, *pairs) == pytest.approx([990, 1050, 1090], abs=20)


def before_shoes(survey: Survey) -> float:
    """Where the shoe cabinet stands on wall D; towards the window is to the left."""
    return float(survey.named["shoes"][1].from_left)  # type: ignore[union-attr]


def test_the_stagers_ways_before() -> None:
    """41, 41 and 55 in."""
    pairs = (("front-door", "opening-hall"), ("front-door", "seats"), ("opening-hall", "seats"))
    found = [width / INCH for width in widest(stager_living(), *pairs)]
    assert found == pytest.approx([41, 41, 55], abs=0.8)


def test_the_couples_ways_before_and_after() -> None:
    """45, 139 and 45 cm; with the dining table slid to the window wall and the lamp moved 95, 139 and 95."""
    pairs = (("door-hall", "door-kitchen"), ("door-hall", "seats"), ("door-kitchen", "seats"))
    before = couple_living()
    assert widest(before, *pairs) == pytest.approx([450, 1390, 450], abs=20)
    after = seen(before, "lamp", from_left=4100 - 3500 - 300.0)
    for name in ("dining", "ch1", "ch2", "ch3", "ch4"):
        item = after.named[name][1]
        after = seen(after, name, from_left=item.from_left - 500, gap=item.gap - 200)  # type: ignore[union-attr]
    assert widest(after, *pairs) == pytest.approx([950, 1390, 950], abs=20)
    cured = {"walkway-too-narrow/door-hall to door-kitchen", "chairs-boxed-in/dining", "pendant-off-center/pendant"}
    assert not cured & set(faults(after)), "one slide of the table answers three faults"


def test_taking_the_renters_rug_away_is_no_cure() -> None:
    """Without the rug the floor is bare: a fault of its own."""
    bare = renter().model_copy(update={"rugs": ()})
    assert "floor-bare/seating group" in faults(bare)
    assert "floor-bare/seating group" not in faults(renter())


def test_a_listing_asks_other_things() -> None:
    """For photographs personal things count, and what blocks a front does not."""
    listing = Brief(profile="listing")
    assert faults(stager_living(), listing)["personal-things/room"].value == 3
    assert "front-blocked/win-b" not in faults(stager_bedroom(), listing)
    assert "personal-things/room" not in faults(stager_living())


def test_three_doors_are_joined_by_two_ways() -> None:
    """Doors 1 and 2 lie on one side of a 500 mm gap, door 3 on the other: the gap is charged once."""
    things = {
        "ceiling": 2400.0,
        "openings": [
            {"name": "door 1", "wall": "A", "from_left": 500.0, "width": 800.0},
            {"name": "door 2", "wall": "A", "from_left": 2500.0, "width": 800.0},
            {"name": "door 3", "wall": "C", "from_left": 1500.0, "width": 800.0},
        ],
        "furniture": [
            {"name": "one", "what": "cabinet", "plan": (0, 2500, 1750, 400), "height": 900.0},
            {"name": "two", "what": "cabinet", "plan": (2250, 2500, 1750, 400), "height": 900.0},
            {"name": "sofa", "what": "sofa", "plan": (0, 3800, 900, 1500), "height": 800.0, "faces": "D"},
        ],
    }
    found = faults(room("mm", (4000.0, 6000.0), things))
    narrow = {name: finding.value for name, finding in found.items() if name.startswith("walkway")}
    assert narrow == {"walkway-too-narrow/door 1 to door 3": 500.0}
