"""The traps of the three demo jobs, each by its letter: what a careless optimiser falls for, and this one must not.

By inspection of the demo jobs themselves; where the trap is about the plan, by the plan.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from budgetfix.catalog.models import Product
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.inspect import look_again
from budgetfix.pipeline.inspecting import inspected
from budgetfix.remedies.kind import Site
from budgetfix.remedies.kinds import hem_tape, lay_rug, longer_rod, new_coffee_table, slide_table, wider_console
from budgetfix.remedies.lamps import socket_for
from budgetfix.room.places import middle
from budgetfix.room.survey import Change, Survey
from tests.practitioner import CHOICES, judged, new_overlaps, spent_minor
from tests.scenarios import job, room_with, run, seen_with, theirs

planned_renter = pytest.mark.xdist_group("renter")
planned_stager = pytest.mark.xdist_group("stager")
planned_couple = pytest.mark.xdist_group("couple")


def swapped(name: str, out: str, into: str) -> tuple[str, ...]:
    """The practitioner's choice with one remedy in the place of another."""
    return tuple(sorted({*CHOICES[name], into} - {out}))


def without(name: str, *things: str) -> tuple[int, int]:
    """(hazard points, points) of a job's rooms after things were carried out and nothing else was done."""
    base, before = inspected(job(name)).base, room_with(name, ())
    gone = tuple(before.named[thing] for thing in things)
    after = before.changed(Change(table, item.name, remove=True) for table, item in gone)
    absences = {one.rule.slug: one for one in base.judged}
    seen = [
        look_again(block, after, base.brief, was, gone, absences)
        for block, was in zip(base.blocks, base.seen, strict=True)
    ]
    return sum(one.hazards for one in seen), sum(one.points for one in seen)


@planned_renter
def test_renter_a_a_new_rod_with_the_old_curtains() -> None:
    """It leaves the hem 300 off the floor and 1.16 of fullness. The score goes on rising beyond glaring, so it is not
    a poor cure but none, and the plan does not take it.
    """
    after = seen_with("renter", ["m07"])
    assert after["hem-off-floor/window"].value == 300
    assert after["hem-off-floor/window"].severity == 3
    assert after["panels-skimpy/window"].value == pytest.approx(2200 / 1900)
    assert judged("renter", ("m07",)).wish > judged("renter", ()).wish
    assert "m07" in run("renter").offer
    assert "m07" not in run("renter").ids


@planned_renter
def test_renter_b_a_rug_is_for_all_seats() -> None:
    """The old rug turned along the sofa still misses the armchair; the plan buys a larger one and no oval table."""
    assert judged("renter", ("m04",)).points < judged("renter", ("m03",)).points
    assert seen_with("renter", ["m03"])["rug-misses-seats/rug"].note.startswith("1 of 2")
    assert {"m04", "m05"} & set(run("renter").ids)
    assert "m13" not in run("renter").ids


@pytest.mark.parametrize(
    "things",
    [
        ("rug",),
        ("curtain",),
        ("picture over the sofa",),
        ("picture over the desk 1", "picture over the desk 2"),
        ("rug", "curtain", "picture over the sofa", "picture over the desk 1", "picture over the desk 2"),
    ],
    ids=["rug", "curtain", "art over sofa", "art over desk", "all"],
)
def test_renter_c_emptying_the_room_is_no_cure(things: tuple[str, ...]) -> None:
    """Rug, curtain and pictures carried out, one by one or all together: not a point less than before."""
    before = inspected(job("renter"))
    hazards, points = without("renter", *things)
    assert hazards >= before.hazard_points
    assert points >= before.points


@planned_renter
def test_renter_d_rug_before_table_and_rod_before_hem() -> None:
    """The rug goes down before bench and table stand on it, in the order of phases and in the plan's own sessions; a
    rod is told before its hem.
    """
    assert lay_rug.KIND.phase < min(kind.KIND.phase for kind in (slide_table, new_coffee_table, wider_console))
    assert longer_rod.KIND.phase == hem_tape.KIND.phase
    tasks = [(task.session, task.candidate, task.text) for task in run("renter").book.tasks]
    rug = next(at for at, task in enumerate(tasks) if task[1] in ("m04", "m05"))
    on_it = [
        at for at, task in enumerate(tasks) if task[0] == tasks[rug][0] and task[1] in ("m12", "m13", "m14", "m15")
    ]
    assert on_it
    assert min(on_it) > rug
    (rod,) = [text for _, id, text in tasks if id in ("m08", "m09")]
    assert rod.index("rod 2390 mm above") < rod.index("hem 10 mm above")


def test_renter_e_the_lamp_stands_where_its_lead_reaches() -> None:
    """By the armchair a socket is half a metre behind the lamp; beyond the hall door's way no lead of 2 m finds one."""
    survey = room_with("renter", ["m17"])
    lamp = next(one for one in survey.lights if one.name == "new floor lamp")
    site = Site(survey, "living room", lamp.name, job("renter").catalog, job("renter").brief)
    assert "lead-too-short/new floor lamp" not in seen_with("renter", ["m17"])
    (measured,) = [one for one in inspected_as("renter", survey) if one.id == "lead-too-short/new floor lamp"]
    assert lamp.lead is not None
    assert lamp.lead + measured.value == pytest.approx(500, abs=10)
    assert socket_for(site, middle(lamp, site.lines), 2000.0) == lamp.socket == "socket C 2600"
    assert socket_for(site, middle(lamp, site.lines), 800.0) == lamp.socket
    assert socket_for(site, (3000.0, 900.0), 2000.0) is None


@planned_stager
@pytest.mark.slow
def test_stager_a_a_small_rug_under_floated_seats() -> None:
    """Floated on the old 5 x 8 the chairs' feet are off the rug: that scores below the stock rug, and is not taken."""
    old = judged("stager", swapped("stager", "t05", "t07"))
    assert old.points > judged("stager", CHOICES["stager"]).points
    assert old.faults["rug-misses-seats/rug"] > 0
    assert seen_with("stager", ["t07"])["rug-misses-seats/rug"].note.startswith("2 of 3")
    assert "rug-misses-seats/rug" not in seen_with("stager", ["t05"])
    assert "t07" not in run("stager").ids


def test_stager_b_no_curtain_no_fault_where_a_blind_stays() -> None:
    """Taking the short panels down scores as well as new ones, because the blind stays; without one it is no cure."""
    new = judged("stager", swapped("stager", "t19", "t16"))
    assert judged("stager", CHOICES["stager"]).wish == new.wish
    assert new.spent_minor == 238263, "with the new panels the quote is above the client's ceiling"
    survey = room_with("stager", ["t19"])
    window = survey.named["bedroom window"][1]
    bare = window.model_copy(update={"blind": False})
    openings = tuple(bare if one.name == window.name else one for one in survey.openings)
    assert "window-bare/bedroom window" in {
        one.id for one in inspected_as("stager", survey.model_copy(update={"openings": openings})) if one.fault
    }


def inspected_as(name: str, survey: Survey) -> tuple[Finding, ...]:
    """Every finding of a job with other rooms."""
    return inspected(replace(job(name), survey=survey)).findings


@planned_stager
@pytest.mark.slow
def test_stager_d_a_minute_has_its_price() -> None:
    """Twenty minutes are 15.00 like everything else on the bill, so what is left of the day is not filled with crumbs:
    every remedy of the plan takes something away, and paid hours and money stay unspent.
    """
    book, brief = run("stager").book, job("stager").brief
    assert brief.labour_minor(20) == 1500
    paid = sum(line.line_minor for line in book.money if line.kind == "labour")
    assert paid == brief.labour_minor(book.best.minutes)
    worth = {task.candidate: task.worth for task in book.tasks if task.step == task.steps}
    assert [id for id, points in worth.items() if points <= 0] == ["t21"], "only the loading, which is a must"
    assert book.sessions is not None
    assert sum(row.minutes_used for row in book.sessions) < sum(row.minutes_available for row in book.sessions) - 300
    assert book.spent_minor < (book.budget_minor or 0)


@planned_stager
@pytest.mark.slow
def test_stager_e_one_rod_across_two_windows() -> None:
    """It needs a support between, and two pairs give a fullness of 1.44: a fault that two rods do not have."""
    across = seen_with("stager", ["t03"])["panels-skimpy/left window"]
    assert across.value == pytest.approx(1.44, abs=0.005)
    assert "support between" in theirs("stager")["t03"].name
    assert "4 brackets" in sold("stager", "b03").label
    assert judged("stager", swapped("stager", "t02", "t03")).points > judged("stager", CHOICES["stager"]).points
    assert "t02" in run("stager").ids


def sold(name: str, product: str) -> Product:
    """A product of a job's catalogue."""
    return job(name).catalog.product(product)


def test_couple_a_the_drop_that_is_sold_decides_the_rod() -> None:
    """A 229 cm panel with its eyelets 4 cm above the rod ends 10 off the floor from 2260, and 50 off it from 2300."""
    survey = room_with("couple", ["n03", "n05", "n17"])
    for curtain in survey.curtains:
        assert curtain.rod_height + 40 - curtain.hem == 2290
    assert not [id for id in seen_with("couple", ["n03", "n05", "n17"]) if id.startswith("hem-off-floor")]
    high = [one.model_copy(update={"rod_height": 2300.0, "hem": 50.0}) for one in survey.curtains]
    found = inspected_as("couple", survey.model_copy(update={"curtains": tuple(high)}))
    assert sum(one.rule == "hem-off-floor" and one.fault for one in found) == 3


@planned_couple
@pytest.mark.slow
def test_couple_b_two_rods_of_one_wall_go_together() -> None:
    """The dining rod alone puts the two 150 out of line, worse than before; with the front rod they are level."""
    assert seen_with("couple")["rods-out-of-line/wall D"].value == 65
    assert seen_with("couple", ["n05"])["rods-out-of-line/wall D"].value == 150
    assert "rods-out-of-line/wall D" not in seen_with("couple", ["n03", "n05"])
    assert ("n03" in run("couple").ids) or ("n05" not in run("couple").ids)


@planned_couple
@pytest.mark.slow
def test_couple_c_what_the_slid_bed_costs_is_told_as_new() -> None:
    """The window side is cured, the wardrobe's front has 600 left: new, and told so. The rest of the bed's wall moves
    with it, and the old holes are follow-on work.
    """
    after = seen_with("couple", ["n16"])
    assert not {"bed-side-tight/bed", "front-blocked/bedroom window"} & set(after)
    assert after["front-blocked/wardrobe"].value == pytest.approx(600)
    moved = {change.item for change in theirs("couple")["n16"].changes}
    assert moved == {"bed", "bedside table", "picture over the bed", "wall light 1", "wall light 2"}
    assert any(care.startswith("Four old holes") for care in theirs("couple")["n16"].cares)
    assert "n16" in run("couple").ids
    assert [row.fault for row in run("couple").book.faults if row.state == "new"] == ["front-blocked/wardrobe"]


def test_couple_d_the_cheapest_cure_for_the_heater() -> None:
    """A longer rod with the old curtains takes the cloth off the heater for 32.00, a third of the new ones' price."""
    assert "curtain-near-heater/front curtain" in seen_with("couple")
    assert "curtain-near-heater/front curtain" not in seen_with("couple", ["n04"])
    assert "curtain-near-heater/front curtain" not in seen_with("couple", ["n03"])
    assert (spent_minor("couple", ("n04",)), spent_minor("couple", ("n03",))) == (3200, 10200)


@planned_couple
@pytest.mark.slow
def test_couple_e_one_slide_of_the_table_cures_three_faults() -> None:
    """Walkway, chairs and the pendant's middle, for nothing; it is in the plan, and in the one that is free."""
    cured = {
        "walkway-too-narrow/hall door to kitchen door", "chairs-boxed-in/dining table", "pendant-off-center/pendant",
    }  # fmt: skip
    assert cured <= set(seen_with("couple"))
    assert not cured & set(seen_with("couple", ["n01"]))
    assert spent_minor("couple", ("n01",)) == 0
    assert "n01" in run("couple").ids


@planned_couple
@pytest.mark.slow
def test_couple_f_the_second_bedside_table_needs_the_bed_moved() -> None:
    """Beside the bed as it stands there is no floor for it; after the slide there is. So the one needs the other."""
    assert ("bed", "second bedside table") in new_overlaps("couple", ("n18",))
    assert new_overlaps("couple", ("n16", "n18")) == []
    assert theirs("couple")["n18"].needs == ("n16",)
    assert "n18" in run("couple").offer, "it is on offer although it does not fit the room as surveyed"
    assert "n18" not in run("couple").ids or "n16" in run("couple").ids


@planned_couple
@pytest.mark.slow
def test_couple_g_packs_are_shared() -> None:
    """A pack holds two straps and each tall piece takes two: as many packs as pieces, in the plan's bill too."""
    assert sold("couple", "q09").pack == 2
    straps = ("n10", "n11", "n19", "n20")
    assert [spent_minor("couple", straps[:count]) for count in (1, 2, 3, 4)] == [600, 1200, 1800, 2400]
    strapped = set(straps) & set(run("couple").ids)
    (line,) = [line for line in run("couple").book.money if line.product == "q09"]
    assert line.packs == len(strapped)
