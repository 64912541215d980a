"""The rooms after a plan as somebody would survey them, and what is listed because no tape would find it."""

from __future__ import annotations

import json
import time
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

from budgetfix.brief.models import Brief, ListedFault
from budgetfix.outcome.afterwards import as_surveyed, still_listed
from budgetfix.outcome.book import FaultRow, PlanBook
from budgetfix.pipeline.inspecting import inspected
from budgetfix.pipeline.planning import Wish, planned
from budgetfix.pipeline.reading import JobOptions, read
from budgetfix.pipeline.writing import write_room
from budgetfix.room.items import Light
from budgetfix.room.survey import Change, Survey
from tests.inspection.rooms import couple_living
from tests.inspection.turned import rebuilt
from tests.pipeline.listed_job import TODAY
from tests.pipeline.test_handing_back import BRIEF, CATALOG, SURVEY

ROW = FaultRow("f", None, "", "", "", "listed", "", "listed", 100, 40, 1.0, 0.4, False, True, True, "better")


def room() -> Survey:
    """The couple's living room, with two guesses at the sofa and a lamp that was placed on the sideboard."""
    lamp = Light(name="small lamp", room="r", what="table lamp", wall="B", from_left=5000.0, gap=100.0, on="sideboard")
    bare = couple_living()
    guesses = frozenset({("sofa", "arm"), ("small lamp", "from_left"), ("small lamp", "gap"), ("r", "ceiling")})
    return rebuilt(bare, lights=(*bare.lights, lamp), guessed=guesses)


def test_what_the_plan_set_is_no_guess_any_more() -> None:
    """A figure that a task sets is known; all other guesses are guesses still, the ceiling's too."""
    before = room()
    after = before.changed([Change("furniture", "sofa", (("arm", 640.0),))])
    found = as_surveyed(before, after)
    assert found.guessed == before.guessed - {("sofa", "arm")}
    assert found.named["sofa"] == after.named["sofa"]


def test_a_lamp_keeps_its_place_when_its_piece_is_moved() -> None:
    """It was taken to stand on the middle of the sideboard; now where it stands is written, or it would jump."""
    before = room()
    after = before.changed([Change("furniture", "sideboard", (("from_left", 4000.0),))])
    assert as_surveyed(before, after).guessed == before.guessed - {("small lamp", "from_left"), ("small lamp", "gap")}
    assert as_surveyed(before, before) == before


def test_nothing_belongs_to_a_thing_that_is_gone() -> None:
    """Without the sideboard the lamp stands on nothing, and no guess speaks of what is not there."""
    before = room()
    after = before.changed([Change("furniture", "sideboard", remove=True), Change("furniture", "sofa", remove=True)])
    found = as_surveyed(before, after)
    assert found.named["small lamp"][1] == replace_on(before, "")
    assert found.guessed == frozenset({("r", "ceiling")})


def replace_on(survey: Survey, on: str) -> object:
    """The lamp, standing on something else."""
    lamp = survey.named["small lamp"][1]
    return type(lamp).model_validate({**dict(lamp), "on": on})


def test_listed_faults_stand_with_what_is_left_of_them() -> None:
    """By name; with the priority taken out again, so that the same brief makes the same points of them."""
    faults = (
        ListedFault(fault="f", points=80, what="a hum", where="hall", safety=True),
        ListedFault(fault="a", points=9),
    )
    rows = (ROW, replace(ROW, fault="a", points_after=0))
    brief = Brief(priorities=(("f", Fraction(2)),))
    assert still_listed(faults, rows, brief) == (
        ListedFault(fault="a", points=0),
        ListedFault(fault="f", points=20, what="a hum", where="hall", safety=True),
    )


def test_a_fault_of_no_interest_keeps_its_points() -> None:
    """With priority 0 nothing is counted, and what was typed is what stands."""
    brief = Brief(priorities=(("f", Fraction(0)),))
    assert still_listed((ListedFault(fault="f", points=80),), (replace(ROW, points_after=0),), brief)[0].points == 80


def test_what_was_taken_away_uncured_is_listed() -> None:
    """Its points are kept, but no survey shows a thing that is not there; measured faults are not listed."""
    taken = replace(ROW, fault="art-too-small/art", rule="art-too-small", subject="art", title="Too small a picture",
                    listed=False, kept=True, points_after=66)  # fmt: skip
    measured = replace(taken, fault="rug-slides/rug", kept=False)
    assert still_listed((), (taken, measured), Brief()) == (
        ListedFault(
            fault="art-too-small/art",
            points=66,
            what="It was taken away, and nothing stands for it: Too small a picture",
            where="art",
        ),
    )


def test_what_is_put_back_is_back_in_the_next_survey(tmp_path: Path) -> None:
    """The brief still says where the landlord's curtain was kept, and yet it is no fault of the room after."""
    for name, text in (("survey", SURVEY), ("brief", BRIEF.format(profile="handing-back")), ("catalog", CATALOG)):
        (tmp_path / f"{name}.yaml").write_text(text, "utf-8")
    job = read(tmp_path, JobOptions(), TODAY)
    book = planned(job, Wish(20.0, time.monotonic))
    assert isinstance(book, PlanBook)
    assert "put-back/curtain" in {one.id for one in book.chosen}
    after = tmp_path / "after"
    write_room(after / "survey.yaml", job, book)
    for name in ("brief.yaml", "catalog.yaml"):
        (after / name).write_bytes((tmp_path / name).read_bytes())
    seen = inspected(read(after, JobOptions(), TODAY))
    assert (seen.points, seen.hazards) == (book.points_after, book.hazards_after)
    assert "not back: curtain" in (after / "survey.yaml").read_text("utf-8")


def test_what_is_taken_away_keeps_its_points(tmp_path: Path) -> None:
    """A remedy of the user's takes a picture down that hung too high: a fresh inspection finds as many points."""
    lines = SURVEY.replace("marks:\n", "").split("  - {what: plug")[0]
    remedies = [{"remedy": "down", "kind": "take-away", "on": "print", "hours": 0.1}]
    (tmp_path / "survey.yaml").write_text(lines, "utf-8")
    (tmp_path / "brief.yaml").write_text(
        json.dumps({"currency": "EUR", "hours": [2], "must": ["down"], "may_worsen": ["wall-bare"]}), "utf-8"
    )
    (tmp_path / "catalog.yaml").write_text(json.dumps({"currency": "EUR", "remedies": remedies}), "utf-8")
    job = read(tmp_path, JobOptions(), TODAY)
    book = planned(job, Wish(20.0, time.monotonic))
    assert isinstance(book, PlanBook)
    kept = [row for row in book.faults if row.kept]
    after = tmp_path / "after"
    write_room(after / "survey.yaml", job, book)
    seen = inspected(read(after, JobOptions(), TODAY))
    assert {one.subject for one in kept} == {"print"}
    assert seen.points == book.points_after
