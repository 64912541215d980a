"""`replan` on small jobs: what is printed where, the exit code, and what is written."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any
from unittest.mock import patch

import pytest
from openpyxl import load_workbook

from budgetfix.cli.replan import MEANWHILE
from tests.cli.test_commands import PLAN_KEYS, job, names, typed

HEADS = {"Buy": ("bought", "paid in all"), "Do": ("done", "real minutes")}


@pytest.fixture(autouse=True)
def _desk(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Every command is typed in a folder of its own, on a terminal of 80 columns."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "80")


def tick(folder: Path, sheet: str, id: str, *values: str | int) -> None:
    """Type into the user's columns of a row, as a spreadsheet program would."""
    path = folder / "plan.xlsx"
    book = load_workbook(path)
    page = book[sheet]
    heads = {str(cell.value).lower(): cell.column for row in page.iter_rows(max_row=8) for cell in row if cell.value}
    row = next(cell.row for cell in page["A"] if cell.value == id)
    for head, value in zip(HEADS[sheet], values, strict=False):
        page.cell(row, heads[head], value)
    book.save(path)


def planned(**brief: object) -> Path:
    """A job with a plan: i1 for 10.00, i2 for 5.00, an hour each."""
    folder = job("job", **{"budget": 15, **brief})
    assert typed("plan", "job", "-q").exit_code == 0
    return folder


def objects(*words: str) -> dict[str, Any]:
    """What `replan --json` prints."""
    done = typed("replan", "job", "--json", *words)
    assert done.exit_code == 0, done.stderr
    found: dict[str, Any] = json.loads(done.stdout)
    return found


def test_the_rest_is_printed_and_written() -> None:
    """The two lines that there are to say, then the plan of the rest; the earlier book is kept."""
    folder = planned()
    tick(folder, "Do", "i1#1", "x", 90)
    tick(folder, "Buy", "remedy:i1", "x", 11)
    done = typed("replan", "job", "--day", "2026-06-01")
    assert (done.exit_code, done.stderr) == (0, "")
    lines = done.stdout.splitlines()
    assert lines[:2] == [
        "SO FAR  11.00 paid, plan 10.00; 1 of 2 steps in 1 h 30 min, plan 1 h.",
        "LEFT    4.00 and 2 h 30 min in 2 sessions: nothing to do.",
    ]
    assert lines[2].startswith("OFF     i2")
    assert all(len(line) < 80 for line in lines)
    assert "plan-kept-1.xlsx" in names(folder)


def test_the_object_is_that_of_the_rest() -> None:
    """The keys of `plan`; money that is left, what is still to do, the faults as they are now."""
    folder = planned()
    tick(folder, "Do", "i1#1", "x")
    tick(folder, "Buy", "remedy:i1", "x")
    found = objects("--day", "2026-06-01")
    assert list(found) == PLAN_KEYS
    assert (found["budget_minor"], found["spent_minor"], found["points_before"], found["points_after"]) == (
        500,
        500,
        40,
        0,
    )
    assert [one["id"] for one in found["chosen"]] == ["i2"]


def test_nothing_ticked_on_the_day_of_the_order_is_the_same_book() -> None:
    """The same bytes, so that nothing is kept."""
    folder = planned()
    before = {path.name: path.read_bytes() for path in folder.iterdir()}
    done = typed("replan", "job", "--day", "2026-06-01")
    assert done.stdout.startswith("SO FAR  nothing is ticked and nothing was paid: all of the job is left.")
    assert {path.name: path.read_bytes() for path in folder.iterdir()} == before


def test_a_book_is_replanned_again_and_again() -> None:
    """Ticks are carried over: a second replan knows the first one's, and all done is an empty plan."""
    folder = planned()
    tick(folder, "Do", "i1#1", "x")
    tick(folder, "Buy", "remedy:i1", "x")
    objects("--day", "2026-06-01")
    tick(folder, "Do", "i2#1", "x")
    tick(folder, "Buy", "remedy:i2", "x")
    found = objects("--day", "2026-06-01")
    assert (found["chosen"], found["purchases"], found["improvement"], found["proven"]) == ([], [], 0, True)
    assert (found["budget_minor"], found["points_before"]) == (0, 0)
    assert {"plan-kept-1.xlsx", "plan-kept-2.xlsx"} <= set(names(folder))


def test_budget_and_hours_are_those_of_the_whole_job() -> None:
    """With 20.00 in all and 10.00 paid, 10.00 are left; of five hours one is done."""
    folder = planned()
    tick(folder, "Do", "i1#1", "x")
    tick(folder, "Buy", "remedy:i1", "x")
    found = objects("--day", "2026-06-01", "--budget", "20", "--hours", "3,2")
    assert (found["budget_minor"], found["minutes_available"]) == (1000, [120, 120])


def test_no_plan_yet() -> None:
    """Exit 2: plan it first."""
    job()
    done = typed("replan", "job")
    assert (done.exit_code, done.stdout) == (2, "")
    assert done.stderr == "job holds no plan.xlsx: plan it first. `budgetfix plan job`\n"


def test_no_folder_and_no_day() -> None:
    """Exit 2 for what is no folder, and for what is no date."""
    assert typed("replan", "nowhere").stderr.startswith("nowhere is no folder.")
    planned()
    done = typed("replan", "job", "--day", "Sunday")
    assert (done.exit_code, done.stderr) == (2, "'Sunday' is no day. Write it as 2026-06-07.\n")


def test_several_jobs() -> None:
    """Exit 2: one at a time."""
    for name in ("one", "two"):
        Path("all").mkdir(exist_ok=True)
        job(f"all/{name}")
    done = typed("replan", "all")
    assert (done.exit_code, done.stdout) == (2, "")
    assert done.stderr == "replan takes one job at a time, and all holds 2.\nName one of them, such as all/one.\n"


def test_what_is_wrong_in_the_book_is_named() -> None:
    """Exit 3 with the cell; nothing is written."""
    folder = planned()
    tick(folder, "Do", "i1#1", "maybe")
    before = (folder / "plan.xlsx").read_bytes()
    done = typed("replan", "job")
    assert (done.exit_code, done.stdout) == (3, "")
    assert done.stderr.startswith("plan.xlsx [Do!")
    assert "found 'maybe'" in done.stderr
    assert (folder / "plan.xlsx").read_bytes() == before


def test_what_cannot_be_kept() -> None:
    """Exit 1: the money for a must is gone."""
    folder = planned(must=["i2"])
    tick(folder, "Buy", "remedy:i1", "x", 14)
    done = typed("replan", "job", "--day", "2026-06-01")
    assert (done.exit_code, done.stdout) == (1, "")
    assert done.stderr.splitlines()[0] == "Of what is left:"
    assert done.stderr.endswith("Nothing was written.\n")


def test_a_ticked_plan_points_here() -> None:
    """`plan` writes over no ticks, and says what reads them back."""
    folder = planned()
    tick(folder, "Do", "i1#1", "x")
    done = typed("plan", "job")
    assert done.exit_code == 2
    assert "`budgetfix replan job` reads them back and plans the rest" in done.stderr


def test_a_book_that_is_saved_meanwhile_is_not_written_over() -> None:
    """Exit 2: somebody ticked on while the rest was planned."""
    folder = planned()
    tick(folder, "Do", "i1#1", "x")
    with patch("budgetfix.intake.kept.as_it_is", lambda path: path.read_bytes() + b" "):
        done = typed("replan", "job", "--day", "2026-06-01")
    assert done.exit_code == 2
    assert done.stderr.split() == MEANWHILE.format(Path("job") / "plan.xlsx").split()


def test_quiet_and_today() -> None:
    """Without a day it is today; quiet prints nothing."""
    planned()
    done = typed("replan", "job", "-q")
    assert (done.exit_code, done.stdout, done.stderr) == (0, "", "")


def test_a_plan_tried_out_long_after_its_dates() -> None:
    """All sessions of a brief with a day of its own are over by today: planned on as it was left, and that is said."""
    planned(ordered="2020-06-01", hours=[{"date": "2020-06-06", "hours": 4}])
    done = typed("replan", "job")
    assert done.exit_code == 0, done.stderr
    assert done.stdout.startswith("Planned as of 2020-06-01: by today, ")
    assert "every session of the brief is over. --day names another" in done.stdout.replace("\n", " ")
    assert "SO FAR  nothing is ticked" in done.stdout
    assert objects("--day", "2020-06-07")["chosen"] == []


def test_a_plan_that_is_no_workbook() -> None:
    """`plan` does not send anybody to `replan` for a file in which nothing can have been ticked."""
    folder = planned()
    (folder / "plan.xlsx").write_text("not a workbook", encoding="utf-8")
    done = typed("plan", "job")
    path = folder / "plan.xlsx"
    assert (done.exit_code, done.stderr.strip()) == (
        2,
        f"{path} is no workbook, and is not written over: move it out of the folder, then plan again.",
    )


def test_a_folder_that_cannot_be_written_to() -> None:
    """One sentence, nothing half written, no traceback."""
    folder = planned()
    before = {path.name: path.read_bytes() for path in folder.iterdir()}
    tick(folder, "Do", "i1#1", "x")
    ticked = (folder / "plan.xlsx").read_bytes()
    error = PermissionError(13, "Permission denied", "job/plan.xlsx")
    with patch("budgetfix.pipeline.writing.write_whole", side_effect=error):
        done = typed("replan", "job", "--day", "2026-06-01")
    assert (done.exit_code, done.stderr.strip()) == (
        2,
        "job/plan.xlsx cannot be written to: Permission denied. Nothing was written.\n"
        "Close it in other programs; see to it that you may write there, or copy the job elsewhere.",
    )
    after = {path.name: path.read_bytes() for path in folder.iterdir()}
    assert after == before | {"plan.xlsx": ticked}
