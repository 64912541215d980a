"""Whole commands on small jobs: what is printed where, the exit code, and what is written."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
import typer
from openpyxl import load_workbook
from typer.testing import CliRunner, Result

from budgetfix import __version__
from budgetfix.cli.app import app
from budgetfix.cli.commands import PlanWords, run_plan
from budgetfix.inspection.registry import RULES
from budgetfix.remedies.registry import KINDS
from tests.exports.test_files import contents
from tests.pipeline.listed_job import one_each, write_job

PLAN_KEYS = [
    "schema", "currency", "budget_minor", "spent_minor", "minutes_available", "minutes_used", "hazards_before",
    "hazards_after", "points_before", "points_after", "improvement", "proven", "bound", "rounds", "candidates",
    "chosen", "purchases", "left", "new", "sessions_used", "plans", "files",
]  # fmt: skip
FINDING_KEYS = {
    "rule", "subject", "room", "measured", "unit", "band", "severity", "points", "certain", "basis", "safety",
}  # fmt: skip
RULE_KEYS = {
    "slug", "title", "measures", "unit", "band", "aim", "glaring", "weight", "family", "safety", "profiles", "basis",
    "source",
}  # fmt: skip
ROOM = """\
unit: cm
rooms: [{room: den, kind: study, ceiling: 250}]
walls:
  - {room: den, wall: A, length: 400}
  - {room: den, wall: B, length: 500}
  - {room: den, wall: C, length: 400}
  - {room: den, wall: D, length: 500}
furniture: [{name: tall shelf, room: den, what: bookcase, wall: A, from_left: 100, width: 80, depth: 30, height: 200}]
"""


@pytest.fixture(autouse=True)
def _desk(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Every command is typed in a folder of its own, on a terminal of 80 columns."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "80")


def typed(*words: str) -> Result:
    """`budgetfix WORDS`."""
    return CliRunner().invoke(app, list(words))


def job(name: str = "job", **brief: object) -> Path:
    """Two faults, and a remedy for each: 10.00 and an hour, 5.00 and an hour."""
    folder = Path(name)
    folder.mkdir(exist_ok=True)
    remedies = [{**one, "hours": 1} for one in one_each((100, 40), (10, 5))]
    write_job(folder, (100, 40), remedies, {"budget": 10, "hours": [2, 2], "ordered": "2026-06-01", **brief})
    return folder


def names(folder: Path) -> list[str]:
    """What is in a folder."""
    return sorted(path.name for path in folder.iterdir())


def test_version() -> None:
    """The version, and nothing else."""
    done = typed("--version")
    assert (done.exit_code, done.stdout, done.stderr) == (0, f"budgetfix {__version__}\n", "")


def test_a_plan_is_printed_and_written() -> None:
    """Exit 0: the screen of a small job word for word, and three files."""
    job()
    done = typed("plan", "job")
    assert done.exit_code == 0
    assert done.stdout.splitlines()[0] == "Job: 10.00 USD to spend, 4 h in 2 sessions."
    assert done.stdout.splitlines()[-1] == ("Wrote job/plan.xlsx, job/plan.html, job/plan.ics, job/buy.csv, job/do.csv")
    assert "PROOF no other set of these 2 remedies takes away more" in done.stdout
    assert done.stderr == ""
    assert names(Path("job")) == [
        "brief.yaml", "buy.csv", "catalog.yaml", "do.csv", "faults.csv", "plan.html", "plan.ics",
        "plan.xlsx",
    ]  # fmt: skip


def test_plan_json_has_the_agreed_keys() -> None:
    """One object with the agreed keys in their order, figures and all; written is the same as without."""
    job()
    done = typed("plan", "job", "--json")
    assert done.exit_code == 0
    told: dict[str, Any] = json.loads(done.stdout)
    assert list(told) == PLAN_KEYS
    assert [one["id"] for one in told["chosen"]] == ["i1"]
    assert told["chosen"][0]["steps"] == [{"session": 1, "minutes": 60, "people": 1}]
    assert (told["budget_minor"], told["spent_minor"], told["improvement"], told["bound"]) == (1000, 1000, 100, 100)
    assert (told["minutes_available"], told["minutes_used"], told["sessions_used"]) == ([120, 120], [60, 0], 1)
    assert told["left"] == [{"fault": "f2", "subject": "", "points": 40, "safety": False}]
    assert set(told["plans"]) == {"best", "recommended", "free"}
    assert set(told["plans"]["best"]) == {"spent_minor", "improvement", "hazards_after", "minutes", "chosen"}
    assert told["files"] == ["job/plan.xlsx", "job/plan.html", "job/plan.ics", "job/buy.csv", "job/do.csv"]
    assert all(Path(name).is_file() for name in told["files"])


def test_options_override_the_brief() -> None:
    """Money and hours on the command line stand over the brief."""
    job(budget=0, hours=[])
    told = json.loads(typed("plan", "job", "--json", "--budget", "15", "--hours", "1,1").stdout)
    assert (told["budget_minor"], told["minutes_used"], told["improvement"]) == (1500, [60, 60], 140)


def test_doing_nothing_is_a_plan() -> None:
    """Exit 0 also when nothing can be paid: nothing chosen, improvement 0, proven."""
    job(budget=0)
    done = typed("plan", "job", "--json")
    told = json.loads(done.stdout)
    assert done.exit_code == 0
    assert (told["chosen"], told["purchases"], told["improvement"], told["proven"]) == ([], [], 0, True)


@pytest.mark.parametrize("more", [(), ("--json",)])
def test_no_plan_says_which_wish_to_relax(more: tuple[str, ...]) -> None:
    """Exit 1: a must above the budget; standard output is empty, nothing is written, and what would do is said."""
    before = names(job(budget=5, must=["i1"]))
    done = typed("plan", "job", *more)
    assert (done.exit_code, done.stdout) == (1, "")
    both = "  must: i1\n  the budget of 5.00 USD\n"
    assert done.stderr == (
        f"No plan keeps these together:\n{both}"
        "i1 could never be done: it costs more than the whole budget.\n"
        f"Any one of these, given up, would let a plan exist:\n{both}"
        "A budget of 10.00 USD (5.00 more) would keep all the rest.\n"
    )
    assert names(Path("job")) == before


def test_a_minute_is_what_choosing_may_take() -> None:
    """The usual words of `plan`; a folder that is not there ends it before anything is read."""
    assert PlanWords().seconds == 60
    with pytest.raises(typer.Exit) as left:
        run_plan(Path("nowhere"), PlanWords())
    assert left.value.exit_code == 2


@pytest.mark.parametrize("command", ["plan", "inspect"])
def test_no_folder(command: str) -> None:
    """Exit 2, and how to make one."""
    done = typed(command, "nowhere")
    assert (done.exit_code, done.stdout) == (2, "")
    assert done.stderr == "nowhere is no folder. `budgetfix start nowhere` makes one.\n"


@pytest.mark.filterwarnings("ignore:Unknown extension", "ignore:Conditional Formatting extension")
def test_a_ticked_plan_is_not_written_over() -> None:
    """Exit 2, and every byte of the folder as it was; an unticked plan is replaced."""
    folder = job()
    assert typed("plan", "job", "--quiet").exit_code == 0
    assert typed("plan", "job", "--quiet").exit_code == 0
    book = load_workbook(folder / "plan.xlsx")
    page = book["Do"]
    head = next(cell for row in page.iter_rows() for cell in row if cell.value == "Done")
    page.cell(head.row + 1, head.column).value = "x"
    book.save(folder / "plan.xlsx")
    before = {path.name: path.read_bytes() for path in folder.iterdir()}
    done = typed("plan", "job", "--json")
    assert (done.exit_code, done.stdout) == (2, "")
    assert "job/plan.xlsx holds ticks or figures of yours, and is not written over." in done.stderr
    assert "replan" in done.stderr
    assert {path.name: path.read_bytes() for path in folder.iterdir()} == before


@pytest.mark.parametrize("words", [["plan"], ["plan", "job", "--seconds", "-1"], ["tidy", "job"]])
def test_misuse(words: list[str]) -> None:
    """Exit 2 for a missing argument, a value that cannot be, a command that is not there."""
    job()
    done = typed(*words)
    assert (done.exit_code, done.stdout) == (2, "")
    assert done.stderr.startswith("Usage: ")


@pytest.mark.parametrize("more", [(), ("--json",)])
def test_every_problem_at_once(more: tuple[str, ...]) -> None:
    """Exit 3: all problems of all files on standard error, with their cells; standard output empty."""
    folder = job()
    (folder / "catalog.yaml").unlink()
    lines = ["remedy,name,answers,cost,hours", 'm1,One,f1:1.0,"12,5O",1', "m2,Two,f9:0.5,5,1"]
    (folder / "catalog.csv").write_text("\n".join(lines) + "\n", encoding="utf-8")
    (folder / "faults.csv").write_text("fault,points\nf1,-3\n", encoding="utf-8")
    before = names(folder)
    done = typed("plan", "job", *more)
    assert (done.exit_code, done.stdout) == (3, "")
    told = done.stderr.splitlines()
    assert told[0] == "catalog.csv [D2] found '12,5O', wanted a price such as 12.50; write no commas"
    assert [line.split(" found ")[0] for line in told[:3]] == [
        "catalog.csv [D2]",
        "catalog.csv [C3]",
        "faults.csv [B2]",
    ]
    assert told[-1] == "3 problems in 2 files. Nothing was written."
    assert names(folder) == before


def test_a_bad_cell_is_marked_in_a_copy() -> None:
    """Exit 3: of a workbook a marked copy is written, and nothing else; the survey itself stays as it was."""
    assert typed("start", "room", "--quiet").exit_code == 0
    book = load_workbook("room/survey.xlsx")
    page = book["Walls"]
    head = next(cell for row in page.iter_rows() for cell in row if cell.value == "Length")
    page.cell(head.row + 2, head.column).value = "quite long"
    book.save("room/survey.xlsx")
    before = Path("room/survey.xlsx").read_bytes()
    done = typed("inspect", "room", "--json")
    assert (done.exit_code, done.stdout) == (3, "")
    assert "'quite long'" in done.stderr
    assert done.stderr.rstrip().endswith("Nothing was written but survey.marked.xlsx.")
    assert names(Path("room")) == ["brief.yaml", "catalog.xlsx", "survey.marked.xlsx", "survey.xlsx"]
    assert Path("room/survey.xlsx").read_bytes() == before


def test_neither_survey_nor_faults() -> None:
    """Exit 3 for a folder with nothing to plan."""
    Path("empty").mkdir()
    done = typed("plan", "empty")
    assert (done.exit_code, done.stdout) == (3, "")
    assert done.stderr.startswith("empty found no survey, wanted survey.xlsx, survey.yaml or faults.csv\n")
    assert names(Path("empty")) == []


def test_stopped_by_the_clock() -> None:
    """Exit 4: without a second to choose in, the best plan so far is printed and written, marked unproven."""
    folder = Path("big")
    folder.mkdir()
    points = [50 + (37 * k * k + 11 * k) % 97 for k in range(40)]
    plain = one_each(points, [20 + (53 * k * k + 7 * k) % 61 for k in range(40)])
    write_job(folder, points, [{**one, "hours": 1} for one in plain], {"budget": 600, "hours": [4] * 6})
    done = typed("plan", "big", "--seconds", "0", "--json")
    told = json.loads(done.stdout)
    assert (done.exit_code, told["proven"]) == (4, False)
    assert told["improvement"] < told["bound"] <= told["points_before"]
    assert Path("big/plan.xlsx").is_file()
    whole = json.loads(typed("plan", "big", "--json").stdout)
    assert whole["proven"]
    assert told["improvement"] <= whole["improvement"] <= told["bound"]


def test_a_new_job_is_blank() -> None:
    """`start` writes three files and says what to do; `inspect` of the blank says what to fill in first."""
    done = typed("start", "room", "--unit", "in", "--currency", "USD")
    assert done.exit_code == 0
    assert done.stdout.splitlines()[0] == "Wrote room/survey.xlsx, catalog.xlsx, brief.yaml."
    assert names(Path("room")) == ["brief.yaml", "catalog.xlsx", "survey.xlsx"]
    blank = typed("inspect", "room")
    assert (blank.exit_code, blank.stdout) == (3, "")
    told = "survey.xlsx found no walls, wanted the length of every wall; fill in the sheet Walls first"
    assert blank.stderr.splitlines()[0] == told
    again = typed("start", "room")
    assert again.exit_code == 2
    assert again.stderr == "room already holds survey.xlsx, catalog.xlsx, brief.yaml. Name a new folder.\n"


def test_inspect_json() -> None:
    """Every finding with the agreed keys, sound ones too; nothing is written."""
    Path("den").mkdir()
    Path("den/survey.yaml").write_text(ROOM, encoding="utf-8")
    done = typed("inspect", "den", "--json")
    told = json.loads(done.stdout)
    assert done.exit_code == 0
    assert list(told) == ["schema", "points", "hazards", "findings"]
    assert all(set(one) == FINDING_KEYS for one in told["findings"])
    loose = [one for one in told["findings"] if one["rule"] == "tall-piece-loose"]
    assert [(one["subject"], one["safety"]) for one in loose] == [("tall shelf", True)]
    assert loose[0]["severity"] > 0
    assert told["hazards"] == sum(1 for one in told["findings"] if one["safety"] and one["severity"] > 0)
    assert names(Path("den")) == ["survey.yaml"]


def test_rules() -> None:
    """All rules on a line each, all kinds on a line each, the page of one of either; an unknown one exits 2."""
    assert typed("rules").stdout.splitlines()[0] == f"{len(RULES)} rules. One page each: budgetfix rules SLUG"
    kinds = typed("rules", "--kinds").stdout.splitlines()
    assert kinds[0] == f"{len(KINDS)} kinds of remedies. One page each: budgetfix rules KIND"
    assert len(kinds) == len(KINDS) + 2
    assert typed("rules", "rod-too-narrow").stdout.startswith("rod-too-narrow - Rod too narrow\n")
    assert typed("rules", "longer-rod").stdout.startswith("longer-rod - ")
    done = typed("rules", "rod-too-broad")
    assert (done.exit_code, done.stdout) == (2, "")
    assert done.stderr == "There is no rule and no kind rod-too-broad. `budgetfix rules` lists them.\n"


def test_rules_json() -> None:
    """A list of all rules with the agreed keys, or of one."""
    told = json.loads(typed("rules", "--json").stdout)
    assert [one["slug"] for one in told] == [rule.slug for rule in RULES]
    assert all(set(one) == RULE_KEYS for one in told)
    alone = json.loads(typed("rules", "rod-too-narrow", "--json").stdout)
    assert alone == [one for one in told if one["slug"] == "rod-too-narrow"]


def test_an_unknown_demo() -> None:
    """Exit 2 with the names that there are; nothing is made."""
    done = typed("demo", "copy", "--scenario", "landlord")
    assert (done.exit_code, done.stdout) == (2, "")
    assert done.stderr == "There is no scenario landlord. There are: renter, stager, couple.\n"
    assert not Path("copy").exists()


def test_demo_spares_other_files() -> None:
    """Exit 2 for a folder that holds something else."""
    Path("papers").mkdir()
    Path("papers/letter.txt").write_text("dear aunt", encoding="utf-8")
    done = typed("demo", "papers")
    assert (done.exit_code, done.stderr) == (2, "papers holds other files. Name a new folder.\n")
    assert names(Path("papers")) == ["letter.txt"]


def test_demo_spares_another_job() -> None:
    """A folder with a brief of one's own is a job: its files are not written over by those of a demo."""
    folder = job("mine")
    before = contents(folder)
    done = typed("demo", "mine")
    assert (done.exit_code, done.stdout, done.stderr.replace("\n", " ").strip()) == (
        2,
        "",
        "mine already holds another brief.yaml, which is not written over. Name a new folder.",
    )
    assert contents(folder) == before


@pytest.mark.slow
def test_demo() -> None:
    """The renter's job is copied, inspected and planned, and the last line names the file to open."""
    done = typed("demo")
    assert done.exit_code == 0
    assert done.stdout.startswith("Copied the renter's job into renter.\n\n$ budgetfix inspect renter\n")
    assert "\n$ budgetfix plan renter\n" in done.stdout
    assert done.stdout.splitlines()[-1] == f"Open {Path('renter/plan.html')}"
    assert {"plan.xlsx", "plan.html", "plan.ics", "buy.csv", "do.csv"} <= set(names(Path("renter")))
