"""`plan` and `inspect` on a folder of jobs: what is printed, the exit code, and that all or nothing is written."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from unittest.mock import patch

import pytest
from openpyxl import load_workbook
from typer.testing import CliRunner, Result

from budgetfix.cli.app import app
from budgetfix.cli.portfolio import passed_over
from budgetfix.intake.houses import Houses
from tests.cli.test_commands import PLAN_KEYS, ROOM
from tests.pipeline.street import JUNE, OVERLAPPING, write_house, write_street

FILES = ["buy.csv", "do.csv", "plan.html", "plan.ics", "plan.xlsx"]


@pytest.fixture(autouse=True)
def _desk(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Every command is typed in a folder of its own with a street in it, on 80 columns and one core."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "80")
    write_street(Path("street"))
    one = patch("budgetfix.pipeline.lanes.cores", lambda: 1)
    with one, patch("budgetfix.pipeline.around.BESIDE", 0.1), patch("budgetfix.pipeline.around.GOODS", 0.02):
        yield


def typed(*words: str) -> Result:
    """`budgetfix WORDS`."""
    return CliRunner().invoke(app, list(words))


def told(result: Result) -> str:
    """Standard error on one line."""
    return " ".join(result.stderr.split())


def written() -> list[str]:
    """Every file of the street that no user wrote."""
    mine = ("brief.yaml", "faults.csv", "catalog.yaml", "survey.yaml")
    return sorted(str(path) for path in Path("street").rglob("*") if path.is_file() and path.name not in mine)


def test_all_jobs_are_planned_and_written() -> None:
    """Each job's lists in its own folder, the workbook and the table of all beside them, and one line a job."""
    done = typed("plan", "street")
    assert done.exit_code == 0, done.output
    houses = ("elm-street", "oak-lane", "pine")
    files = [f"street/{house}/{name}" for house in houses for name in FILES]
    assert written() == sorted([*files, "street/portfolio.csv", "street/portfolio.xlsx"])
    assert "Street: 3 jobs, Thu 4 Jun to Tue 4 Aug. Money in USD." in done.stdout
    assert "Ivory rug: Oak Lane until Mon 20 Jul; Elm Street and Pine go without." in " ".join(done.stdout.split())
    assert max(len(line) for line in done.stdout.splitlines()) <= 79


def test_the_object_of_all_jobs() -> None:
    """The keys of one job and `jobs`, nothing else on standard output; every file that is named is there."""
    done = typed("plan", "street", "--json")
    found = json.loads(done.stdout)
    assert list(found) == [*PLAN_KEYS, "jobs"]
    assert list(found["jobs"]) == ["elm-street", "oak-lane", "pine"]
    assert (found["spent_minor"], found["points_after"], found["proven"]) == (15000, 30, True)
    assert all(Path(name).is_file() for name in found["files"])
    assert found["jobs"]["pine"]["files"][0] == "street/pine/plan.xlsx"


def test_planning_anew_gives_the_same_bytes() -> None:
    """Over its own untouched files, with nothing changed."""
    typed("plan", "street", "--quiet")
    first = {name: Path(name).read_bytes() for name in written()}
    assert typed("plan", "street", "--quiet").stdout == ""
    assert {name: Path(name).read_bytes() for name in written()} == first


def test_every_problem_of_every_job_is_told_at_once() -> None:
    """With the job's folder in front, a shared catalogue once, and nothing written."""
    write_house(Path("street/elm-street"), (1, 2), JUNE, budget="much")
    write_house(Path("street/pine"), (1, 2), JUNE, load="heavy")
    catalog = Path("street/catalog.yaml")
    catalog.write_text(catalog.read_text().replace('"price": 60', '"price": "dear"'))
    done = typed("plan", "street")
    assert done.exit_code == 3
    assert done.stderr.count("'dear'") == 1
    assert "catalog.yaml [line 1] found 'dear'" in told(done)
    assert "elm-street/brief.yaml [line 1] found 'much'" in told(done)
    assert "pine/brief.yaml [line 1] found 'heavy'" in told(done)
    assert "3 problems in 3 files. Nothing was written." in told(done)
    assert written() == []


def test_two_currencies_have_no_sum() -> None:
    """Word for word."""
    Path("street/oak-lane/catalog.yaml").write_text('{"currency": "EUR", "remedies": []}')
    write_house(Path("street/oak-lane"), (1, 2), JUNE, catalog="catalog.yaml", currency="EUR")
    done = typed("plan", "street")
    assert done.exit_code == 3
    wanted = "wanted USD, as in elm-street: jobs planned together have one currency"
    assert told(done).startswith(f"oak-lane/brief.yaml [currency] found EUR, {wanted}")


VANS = {"out": {"date": "2026-06-04", "from": "09:00", "to": "11:00"}}
LATE = {"out": {"date": "2026-06-04", "from": "10:30", "to": "12:00"}}
AFTER = {"out": {"date": "2026-06-04", "from": "11:00", "to": "12:00"}}


def test_one_van_cannot_be_in_two_places() -> None:
    """Two slots that overlap are a problem; one after the other, or two vans by name, are none."""
    hours = [{"date": "2026-06-04", "start": "09:00", "hours": 6}]
    write_house(Path("street/elm-street"), (1, 2), JUNE, vans=VANS, hours=hours)
    write_house(Path("street/oak-lane"), (1, 2), OVERLAPPING, vans=LATE, hours=hours)
    done = typed("inspect", "street")
    assert done.exit_code == 3
    assert told(done).startswith(
        "oak-lane/brief.yaml [vans, out] found Thursday 4 June from 10:30 to 12:00, wanted another time, or another "
        "`van`: elm-street has it from 09:00 to 11:00"
    )
    write_house(Path("street/oak-lane"), (1, 2), OVERLAPPING, vans=AFTER, hours=hours)
    assert typed("inspect", "street").exit_code == 0
    named = {"out": {**LATE["out"], "van": "white van"}}
    write_house(Path("street/oak-lane"), (1, 2), OVERLAPPING, vans=named, hours=hours)
    assert typed("inspect", "street").exit_code == 0


def test_a_ticked_plan_of_one_job_stops_all() -> None:
    """Nothing is written, not even for the other jobs."""
    typed("plan", "street", "--quiet")
    path = Path("street/oak-lane/plan.xlsx")
    book = load_workbook(path)
    book["Buy"]["B5"] = "x"
    book.save(path)
    before = {name: Path(name).read_bytes() for name in written()}
    done = typed("plan", "street")
    assert done.exit_code == 2
    assert told(done).startswith("street/oak-lane/plan.xlsx holds ticks or figures of yours")
    assert {name: Path(name).read_bytes() for name in written()} == before


def test_a_portfolio_that_somebody_typed_into_is_kept() -> None:
    """As any plan of ours with something of the user's in it."""
    typed("plan", "street", "--quiet")
    path = Path("street/portfolio.xlsx")
    book = load_workbook(path)
    book["Jobs"]["N5"] = "call the client"
    book.save(path)
    done = typed("plan", "street")
    assert done.exit_code == 2
    assert told(done).startswith("street/portfolio.xlsx holds ticks or figures of yours")


def test_a_job_without_a_plan_is_named() -> None:
    """Exit 1, with the wishes that clash, and nothing is written."""
    write_house(Path("street/oak-lane"), (30, 10), OVERLAPPING, must=["hall"], budget=5)
    done = typed("plan", "street")
    assert done.exit_code == 1
    assert told(done).startswith("oak-lane: no plan. No plan keeps these together:")
    assert "elm-street" not in told(done)
    assert (done.stdout, written()) == ("", [])


def test_jobs_that_cannot_all_have_their_must() -> None:
    """Exit 1, with the piece, how many there are, and the houses."""
    for name in ("elm-street", "oak-lane"):
        write_house(Path("street") / name, (20, 10), JUNE, must=["hall"])
    done = typed("plan", "street", "--json")
    assert done.exit_code == 1
    assert told(done) == (
        "Each job has a plan of its own, but not all of them together: Ivory rug: 1 there, wanted in Elm Street and "
        "Oak Lane on the same days Change the days of a stay, or give up a must. Nothing was written."
    )
    assert (done.stdout, written()) == ("", [])


def test_options_of_one_job_are_refused() -> None:
    """Money, hours and a catalogue belong to one of them."""
    done = typed("plan", "street", "--budget", "300", "--hours", "4,3")
    assert done.exit_code == 2
    assert told(done) == (
        "--budget and --hours belong to one job, and street holds 3. Name one of them, such as street/elm-street, or "
        "write it into the brief.yaml of each."
    )


def test_folders_that_are_no_jobs_are_passed_over() -> None:
    """With one line; hidden ones without."""
    Path("street/photos").mkdir()
    Path("street/.old").mkdir()
    done = typed("plan", "street")
    assert done.exit_code == 0
    assert "NOTE street/photos is no job and was passed over: no survey.xlsx, survey.yaml or faults.csv." in " ".join(
        done.stdout.split()
    )
    Path("street/notes").mkdir()
    assert "street/notes, street/photos are no jobs and were passed over" in " ".join(
        typed("inspect", "street").stdout.split()
    )


def test_nothing_is_said_where_nothing_is_passed_over() -> None:
    """One folder, several, none."""
    assert passed_over(Path("a"), Houses(("b",))) == ()
    assert len(passed_over(Path("a"), Houses(("b",), ("c", "d")))) == 1


def test_stopped_before_proof_is_exit_4() -> None:
    """Written all the same, and not called best."""
    with patch("budgetfix.optimize.sharing.Shared.proven", False):
        done = typed("plan", "street", "--json")
    assert done.exit_code == 4
    found = json.loads(done.stdout)
    assert not found["proven"]
    assert found["bound"] >= found["improvement"]
    assert len(written()) == 17


def test_a_folder_that_is_neither_has_the_old_message() -> None:
    """A folder without jobs in it is a job without a survey."""
    Path("empty/inside").mkdir(parents=True)
    done = typed("plan", "empty")
    assert done.exit_code == 3
    assert "empty found no survey, wanted survey.xlsx, survey.yaml or faults.csv" in told(done)
    assert typed("plan", "nowhere").exit_code == 2


def test_a_job_with_jobs_below_it_is_a_job() -> None:
    """What holds a survey or faults is planned as one job, whatever its sub-folders hold."""
    Path("street/faults.csv").write_text("fault,points\nf1,3\n")
    Path("street/catalog.yaml").write_text('{"remedies": []}')
    assert "jobs" not in json.loads(typed("plan", "street", "--json").stdout)


def test_inspections_in_one_table() -> None:
    """Sums by job, and how to see one in full; nothing is written."""
    Path("street/quay").mkdir()
    Path("street/quay/survey.yaml").write_text(ROOM)
    done = typed("inspect", "street")
    assert done.exit_code == 0
    assert "  Quay " in done.stdout
    assert "budgetfix inspect street/quay" in done.stdout
    assert written() == []
    found = json.loads(typed("inspect", "street", "--json").stdout)
    assert found["points"] == sum(one["points"] for one in found["jobs"].values())
    assert {one["job"] for one in found["findings"]} == {"quay"}
