"""A fault of priority 0 is answered by nothing: no remedy is said to be for it, and none is chosen for it alone."""

from __future__ import annotations

import json
from pathlib import Path

from budgetfix.outcome.book import PlanBook
from tests.pipeline.listed_job import proven_plan, write_job
from tests.trials.laws_walk import Files, Told, told

REMEDIES = [
    {"remedy": "both", "answers": {"f1": 1, "f2": 1}, "cost": 5, "hours": 0.5},
    {"remedy": "second", "answers": {"f2": 1}, "cost": 1, "hours": 0.5},
]
ROOM = """\
unit: mm
rooms: [{room: den, kind: living room, ceiling: 2500}]
walls: [{wall: A, length: 4000}, {wall: B, length: 5000}]
furniture: [{name: shelf, what: bookcase, wall: A, from_left: 1000, width: 800, depth: 300, height: 2000}]
pictures: [{name: print, what: picture, wall: C, from_left: 1000, width: 900, height: 600, bottom: 1700}]
"""


def book(folder: Path, **brief: object) -> PlanBook:
    """The plan for two listed faults of 100 and 40 points."""
    write_job(folder, (100, 40), REMEDIES, {"budget": 10, "hours": [2], **brief})
    return proven_plan(folder)


def test_a_listed_fault_of_priority_0_is_not_told_as_answered(tmp_path: Path) -> None:
    """The remedy for both is for the first alone, and the one for the second is not done."""
    assert [one.answers for one in book(tmp_path).chosen] == [("f1", "f2")]
    without = book(tmp_path, priorities={"f2": 0})
    assert [(one.id, one.answers) for one in without.chosen] == [("both", ("f1",))]


def measured(folder: Path, **brief: object) -> Told:
    """The plan of a small room with a picture that hangs too high."""
    from budgetfix.intake.survey_file import read_survey

    folder.mkdir(exist_ok=True)
    (folder / "room.yaml").write_text(ROOM, "utf-8")
    survey = read_survey(folder / "room.yaml").survey
    found = told(Files(json.loads(json.dumps({"currency": "EUR", "hours": [2], **brief})), {"currency": "EUR"},
                       survey=survey), folder / "job")  # fmt: skip
    assert found is not None
    return found


def test_a_rule_of_priority_0_is_not_told_as_answered(tmp_path: Path) -> None:
    """The picture is hung lower for its height; with no interest in its height nothing is done for that."""
    plain = measured(tmp_path)
    answered = {name for one in plain.plan["chosen"] for name in one["answers"]}
    assert "art-off-height/print" in answered
    without = measured(tmp_path, priorities={"art-off-height": 0})
    assert "art-off-height/print" not in {name for one in without.plan["chosen"] for name in one["answers"]}
    assert all(one["answers"] for one in without.plan["chosen"])
