"""What is asked back: the figures left blank on which most hangs, three at most."""

from __future__ import annotations

import time
from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from budgetfix.base.twin import Twin
from budgetfix.forms.column import Column, Default
from budgetfix.forms.survey_form import FORM_OF
from budgetfix.framing.frame import Framed, Ground
from budgetfix.inspection.finding import Finding
from budgetfix.intake.raw_rows import RawSurvey
from budgetfix.intake.survey_file import judge_raw
from budgetfix.intake.survey_yaml import raw_yaml
from budgetfix.outcome.book import PlanBook
from budgetfix.pipeline.asking_back import MOST, asked_of_plan, asked_of_room, figures, marked, words
from budgetfix.pipeline.candidates import offered
from budgetfix.pipeline.inspecting import Inspected, inspected
from budgetfix.pipeline.planning import Wish, planned
from budgetfix.pipeline.reading import JobOptions, read
from budgetfix.remedies.candidate import Candidate
from budgetfix.room.survey import Change, Survey
from tests.framing.small_jobs import measured_ground

DEMOS = Path(__file__).parents[2] / "catalog_demo"
DAY = date(2026, 6, 1)

ROOM = """\
unit: cm
rooms: [{room: den, kind: living room, ceiling: 240, floor: carpet}]
walls: [{wall: A, length: 400}, {wall: B, length: 500}, {wall: C}, {wall: D}]
openings: [{name: door, what: door, wall: A, from_left: 20, width: 80}]
furniture:
  - {name: sofa, what: sofa, wall: B, from_left: 150, width: 200, depth: 90, height: 85, seat: 43}
lights:
  - {name: lamp, what: floor lamp, wall: C, from_left: 20, width: 30, depth: 30, lumens: 1500, kelvin: 2700,
     socket: plug}
sockets: [{name: plug, wall: C, from_left: 240}]
"""
"""Left blank: the door's top, the sofa's arm, the lamp's lead. Only the lead decides anything: the plug is far."""


def job_of(folder: Path, survey: str = ROOM) -> Inspected:
    """A job in a folder, inspected."""
    (folder / "survey.yaml").write_text(survey)
    (folder / "brief.yaml").write_text("currency: EUR\nbudget: 100\nhours: [3]\nordered: 2026-06-01\n")
    return inspected(read(folder, JobOptions(), DAY))


def test_one_blank_figure_matters_and_two_do_not(tmp_path: Path) -> None:
    """The lead alone is asked for, with the points that hang on it; arm and door top have no say here."""
    seen = job_of(tmp_path)
    assert [(one.item, one.field) for one in figures(seen.base)] == [("door", "top"), ("lamp", "lead"), ("sofa", "arm")]
    (asked,) = seen.asked
    assert asked.startswith("lead of lamp: 150 cm was assumed; between 120 cm and 250 cm up to ")


def test_the_points_are_those_of_the_room_with_that_figure_typed(tmp_path: Path) -> None:
    """Typing 120 or 250 cm for the lead and inspecting gives the same swing."""
    (asked,) = asked_of_room(job_of(tmp_path).base, figures(job_of(tmp_path).base))
    sums = []
    for lead in ("", ", lead: 120", ", lead: 250"):
        typed = job_of(tmp_path, ROOM.replace("socket: plug}", f"socket: plug{lead}}}"))
        sums.append(typed.points + typed.hazard_points)
    assert asked.swing == max(sums) - min(sums) > 0


def test_a_full_survey_asks_nothing(tmp_path: Path) -> None:
    """With the three figures filled in there is nothing to ask."""
    full = ROOM.replace("seat: 43", "seat: 43, arm: 60").replace("socket: plug", "socket: plug, lead: 150")
    seen = job_of(tmp_path, full.replace("width: 80}", "width: 80, top: 203}"))
    assert seen.base.survey is not None
    assert not seen.base.survey.guessed
    assert seen.asked == ()


def test_a_survey_without_a_room_line_asks_for_its_ceiling(tmp_path: Path) -> None:
    """The ceiling of the only room, which has no name; something is hung with respect to it."""
    lines = ROOM.splitlines()
    bare = "\n".join([lines[0], *lines[2:]]) + (
        "\nopenings: [{name: win, what: window, wall: A, from_left: 150, width: 120, bottom: 90, top: 210}]"
        "\ncurtains: [{window: win, rod_height: 215, rod_from_left: 140, rod_width: 140, panel_width: 140, hem: 2}]\n"
    )
    bare = bare.replace(lines[3] + "\n", "", 1)
    assert any(words.startswith("ceiling of the room: 240 cm was assumed") for words in job_of(tmp_path, bare).asked)


def blanked(raw: RawSurvey, column: Column, table: str, at: int) -> RawSurvey:
    """The file with one cell empty."""
    rows = {name: list(lines) for name, lines in raw.rows.items()}
    cells = {field: cell for field, cell in rows[table][at].cells.items() if field != column.field}
    rows[table][at] = replace(rows[table][at], cells=cells)
    return replace(raw, rows=rows)


def each_blank(raw: RawSurvey) -> Iterator[RawSurvey]:
    """The file with each figure left blank in turn that has a default."""
    for table, columns in FORM_OF.items():
        for at, row in enumerate(raw.rows.get(table, [])):
            for column in columns:
                if column.defaults and column.field in row.cells:
                    yield blanked(raw, column, table, at)


def by_id(seen: Inspected) -> dict[tuple[str, str], Finding]:
    """Findings by room and id."""
    return {(one.room, one.id): one for one in seen.findings}


@pytest.mark.parametrize("scenario", ["renter", "stager", "couple"])
def test_every_finding_that_a_default_decides_is_uncertain(scenario: str) -> None:
    """Leave each figure of a demo blank in turn: whatever finding comes out otherwise says that it is not sure."""
    raw, job = raw_yaml(DEMOS / scenario / "survey.yaml"), read(DEMOS / scenario, JobOptions(), DAY)
    full = judge_raw(raw).survey
    was, changed = by_id(inspected(replace(job, survey=full))), 0
    for other in each_blank(raw):
        survey = judge_raw(other).survey
        if survey is None:
            continue
        seen = inspected(replace(job, survey=survey))
        assert len(seen.asked) <= MOST
        for key, finding in by_id(seen).items():
            before = was.get(key)
            if before is None or (before.value, before.severity) != (finding.value, finding.severity):
                changed += 1
                assert not finding.certain, finding.id
    assert changed > 0


def test_never_more_than_three_are_asked() -> None:
    """The renter leaves everything blank that may be: three come back, those with most points first."""
    raw, job = raw_yaml(DEMOS / "renter" / "survey.yaml"), read(DEMOS / "renter", JobOptions(), DAY)
    for table, columns in FORM_OF.items():
        for at in range(len(raw.rows.get(table, []))):
            for column in (column for column in columns if column.defaults):
                other = blanked(raw, column, table, at)
                raw = other if judge_raw(other).survey is not None else raw
    base = inspected(replace(job, survey=judge_raw(raw).survey)).base
    asked = asked_of_room(base, figures(base))
    each = sorted((one.swing for figure in figures(base) for one in asked_of_room(base, (figure,))), reverse=True)
    assert len(each) > MOST
    assert [one.swing for one in asked] == each[:MOST]


def guessing(*pairs: tuple[str, str]) -> Ground:
    """A small room in which these figures were left blank."""
    base = measured_ground()
    assert base.survey is not None
    kept = {name: getattr(base.survey, name) for name in Survey.model_fields}
    return replace(base, survey=Survey.model_validate({**kept, "guessed": frozenset(pairs)}))


def framed_with(base: Ground, one: Candidate) -> Framed:
    """The room's own offer, and one candidate more."""
    framed = offered(base).framed
    return replace(framed, candidates={**framed.candidates, one.id: one})


def test_a_plan_that_would_no_longer_fit_is_asked_first() -> None:
    """A chest is moved to 100 mm before a sofa that is taken for 900 mm deep: at 1,070 mm they share a spot."""
    base = guessing(("sofa", "depth"), ("sofa", "seat"))
    before = Change("furniture", "bookcase", (("wall", "B"), ("from_left", 1600.0), ("gap", 1000.0)))
    move = Candidate(id="move", kind="move-piece", name="Move it", changes=(before,), own=True)
    asked = asked_of_plan(base, framed_with(base, move), ("move",))
    assert next((one.figure.field, one.breaks) for one in asked) == ("depth", True)
    assert base.survey is not None
    assert "the plan might not fit" in words(asked[0], base.survey)


def test_what_a_plan_does_not_touch_is_not_asked_for_it() -> None:
    """Nothing chosen, nothing claimed: no figure can move that."""
    base = guessing(("sofa", "depth"), ("r", "ceiling"))
    assert asked_of_plan(base, offered(base).framed, ()) == ()
    assert asked_of_plan(replace(base, survey=None, seen=(), blocks=()), offered(base).framed, ()) == ()


def test_marking_changes_nothing_but_certainty() -> None:
    """Points and severities stay; only what hangs on the figure becomes uncertain."""
    base = guessing(("sofa", "depth"))
    made = marked(base, figures(base))
    old, new = ([one for seen in each.seen for one in seen.findings] for each in (base, made))
    assert [replace(one, certain=True) for one in old] == [replace(one, certain=True) for one in new]
    assert {one.rule for one in new if not one.certain} - {one.rule for one in old if not one.certain}
    assert any(one.certain for one in new)


def test_the_plan_says_what_to_measure_first(tmp_path: Path) -> None:
    """A lead that may be long enough after all: the plan that moves the lamp for it says so in its notes."""
    job_of(tmp_path)
    (tmp_path / "catalog.yaml").write_text(
        "remedies: [{remedy: near, kind: move-lamp, on: lamp, set: {from_left: 200}, hours: 0.1}]\n"
    )
    book = planned(read(tmp_path, JobOptions(), DAY), Wish(20.0, time.monotonic))
    assert isinstance(book, PlanBook)
    (note,) = [note for note in book.notes if note.startswith("Measure this before you start: ")]
    assert "lead of lamp: 150 cm was assumed; between 120 cm and 250 cm up to " in note


@pytest.mark.parametrize("column", [one for table in FORM_OF.values() for one in table if one.defaults])
def test_what_is_taken_lies_between_what_is_usual(column: Column) -> None:
    """For inches and for metres, low and high of every default stand on either side of it."""
    for default in column.defaults:
        for metric in (True, False):
            low, taken, high = default.usual(metric)
            assert low < taken < high
            assert column.usual_for(default.whats[0] if default.whats else "", metric) == (low, taken, high)


def test_a_column_takes_the_default_of_its_sort() -> None:
    """A sofa's, not a stool's; an inch value is exact in inches and round in millimetres."""
    column = Column("height", "Height", defaults=(Default(Twin(34, 850), Twin(26, 660), Twin(40, 1020), ("sofa",)),))
    assert column.default_for("sofa", metric=True) == 850
    assert column.default_for("sofa", metric=False) == 34 * 25.4
    assert column.default_for("stool", metric=True) is None
    assert column.usual_for("stool", metric=True) is None
