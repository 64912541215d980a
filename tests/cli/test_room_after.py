"""`--room-after FILE`: the survey of the rooms as they will stand, and every reason not to write it."""

from __future__ import annotations

import json
import shutil
from pathlib import Path
from typing import Any

import pytest

from tests.cli.test_commands import ROOM, job, names, typed

BRIEF: dict[str, object] = {"currency": "EUR", "budget": 50, "hours": [3], "ordered": "2026-06-01"}
STRAP = {"product": "strap", "name": "Strap", "what": "strap", "price": 6}


@pytest.fixture(autouse=True)
def _desk(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Every command is typed in a folder of its own, on a terminal of 80 columns."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "80")


def den(**brief: object) -> Path:
    """A study with a tall shelf that is not fixed, and two faults that somebody listed."""
    folder = Path("den")
    folder.mkdir()
    remedies = [
        {"remedy": "i1", "answers": {"draught": 0.75}, "cost": 5, "hours": 0.5},
        {"remedy": "i2", "answers": {"hum": 1}, "cost": 5, "hours": 0.5},
    ]
    catalog = {"currency": "EUR", "products": [STRAP], "remedies": remedies}
    (folder / "survey.yaml").write_text(ROOM, "utf-8")
    (folder / "catalog.yaml").write_text(json.dumps(catalog), "utf-8")
    (folder / "brief.yaml").write_text(json.dumps({**BRIEF, **brief}), "utf-8")
    (folder / "faults.csv").write_text("fault,points,where,safety\ndraught,90,window,no\nhum,40,,no\n", "utf-8")
    return folder


def seen(folder: str) -> dict[str, Any]:
    """What `inspect --json` prints."""
    done = typed("inspect", folder, "--json")
    assert done.exit_code == 0, done.stderr
    found: dict[str, Any] = json.loads(done.stdout)
    return found


def beside(room: str) -> None:
    """Copies of the brief and the catalogue beside a room."""
    for name in ("brief.yaml", "catalog.yaml"):
        shutil.copy(Path("den") / name, Path(room) / name)


def test_the_room_after_is_inspected_as_the_plan_says() -> None:
    """The shelf is fixed, half a fault is left, the other is gone; the file is told among those that were written."""
    den()
    done = typed("plan", "den", "--json", "--seconds", "5", "--room-after", "next/survey.yaml")
    assert (done.exit_code, done.stderr) == (0, "")
    plan = json.loads(done.stdout)
    assert plan["files"][-1] == str(Path("next/survey.yaml"))
    text = Path("next/survey.yaml").read_text("utf-8")
    assert "height: 200, fixed: yes}" in text
    assert text.endswith("faults:\n  - {fault: draught, points: 22, where: window}\n  - {fault: hum, points: 0}\n")
    beside("next")
    found = seen("next")
    assert (found["points"], found["hazards"]) == (plan["points_after"], plan["hazards_after"])
    assert seen("den")["hazards"] > found["hazards"]


def test_the_rest_is_written_too() -> None:
    """`replan` writes the rooms as the rest of the plan leaves them."""
    den()
    assert typed("plan", "den", "-q", "--seconds", "5").exit_code == 0
    done = typed("replan", "den", "-q", "--seconds", "5", "--room-after", "later.yaml")
    assert (done.exit_code, done.stderr) == (0, "")
    assert "fixed: yes" in Path("later.yaml").read_text("utf-8")


def test_a_file_that_is_there_is_spared() -> None:
    """Exit 2 before any work; neither it nor the folder is touched."""
    den()
    Path("mine.yaml").write_text("mine", "utf-8")
    before = names(Path("den"))
    done = typed("plan", "den", "--room-after", "mine.yaml")
    assert (done.exit_code, done.stdout) == (2, "")
    assert done.stderr == "mine.yaml is there already, and is not written over. Name a file that is not there yet.\n"
    assert Path("mine.yaml").read_text("utf-8") == "mine"
    assert names(Path("den")) == before


def test_only_text_is_written() -> None:
    """A workbook is not what comes out, so a name that promises one is refused."""
    den()
    done = typed("plan", "den", "--room-after", "next/survey.xlsx")
    assert (done.exit_code, done.stdout) == (2, "")
    assert done.stderr == (
        "next/survey.xlsx is no name for a survey as text. Name one that ends in .yaml, such as "
        "next/survey-after.yaml.\n"
    )


def test_no_other_file_of_the_job_is_named() -> None:
    """What the job reads as its catalogue must not become a survey."""
    folder = den()
    (folder / "catalog.yaml").unlink()
    done = typed("plan", "den", "--room-after", "den/catalog.yaml")
    assert (done.exit_code, done.stdout) == (2, "")
    assert done.stderr == (
        "den/catalog.yaml is a name that budgetfix reads in den as something else. Name another one, such as "
        "den/survey-after.yaml.\n"
    )


def test_a_job_without_rooms_has_none_to_write() -> None:
    """Listed faults only: said before any work."""
    job()
    done = typed("plan", "job", "--room-after", "next.yaml")
    assert (done.exit_code, done.stdout) == (2, "")
    assert done.stderr == "job has no survey: there is no room to write. Leave out --room-after.\n"
    assert "plan.xlsx" not in names(Path("job"))


def test_one_job_at_a_time() -> None:
    """A folder of jobs has several rooms after, and one file would hold one."""
    Path("street").mkdir()
    for name in ("street/a", "street/b"):
        job(name)
    done = typed("plan", "street", "--room-after", "next.yaml")
    assert (done.exit_code, done.stdout) == (2, "")
    assert (
        done.stderr
        == "--room-after takes one job at a time, and street holds 2 jobs.\nName one of them, such as street/a.\n"
    )


def test_a_place_that_cannot_be_written_is_told() -> None:
    """The lists are there, the room is not, and both are said."""
    den()
    Path("wall").write_text("a file, no folder", "utf-8")
    done = typed("plan", "den", "-q", "--seconds", "5", "--room-after", "wall/survey.yaml")
    assert done.exit_code == 2
    assert done.stderr.startswith("The lists are written, but wall/survey.yaml could not be: ")
    assert "plan.xlsx" in names(Path("den"))
