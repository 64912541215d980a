"""`compare`, word for word: what is printed, the exit codes, and that nothing is written."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from budgetfix.cli.app import app
from budgetfix.cli.compare import CompareWords
from budgetfix.exports.beside_json import beside_object
from budgetfix.exports.beside_screen import beside_text, so
from budgetfix.outcome.beside import Beside
from tests.pipeline.listed_job import write_job
from tests.pipeline.test_comparing import SHELF, SHELVES, both

SAID = """\
A  one
B  other

                                     A                 B       B against A
  money there is                 20.00             60.00            +40.00
  to spend                       20.00             60.00            +40.00
  hours there are                  4 h               4 h
  work planned                     2 h               3 h              +1 h
  sessions used                      1                 1
  hazards left                       0                 0
  points left                50 of 130          0 of 130               −50

BOTH, IN ANOTHER WAY
  A        1 h      20.00  Put up pine
  B        2 h      60.00  Put up oak

BOUGHT OTHERWISE
  Oak shelf: only B, 60.00
  Pine shelf: only A, 20.00

FAULTS THAT END OTHERWISE
  f1: A 50 left, B gone

SO    B takes away 50 points more, for 40.00 more and 1 h more work.
PROOF both are proven: in each job, no other set of its remedies does more.
      Nothing was written."""


@pytest.fixture(autouse=True)
def _desk(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Every command is typed in a folder of its own, on a terminal of 80 columns."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "80")


def typed(*words: str) -> Result:
    """`budgetfix compare WORDS`."""
    return CliRunner().invoke(app, ["compare", *words])


def shelves(name: str, **brief: object) -> Path:
    """The job of the shelves, in a folder."""
    folder = Path(name)
    folder.mkdir()
    write_job(folder, [100, 30], SHELVES, {"hours": [4], **brief}, SHELF)
    return folder


def seen(tmp_path: Path) -> Beside:
    """Forty more for the shelves."""
    from budgetfix.pipeline.reading import JobOptions

    found = both(tmp_path, JobOptions(budget="+40"), {"budget": 20, "hours": [4]})
    assert isinstance(found, Beside)
    return found


def test_said(tmp_path: Path) -> None:
    """The whole screen, and none of it wider than 79 columns."""
    text = beside_text(seen(tmp_path))
    assert text == SAID
    assert max(map(len, text.splitlines())) <= 79


def test_the_other_way_round(tmp_path: Path) -> None:
    """Less money is told as less."""
    from dataclasses import replace

    found = seen(tmp_path)
    back = replace(found, first=found.second, second=found.first)
    assert so(back) == "B takes away 50 points fewer, for 40.00 less and 1 h less work."


def test_command() -> None:
    """One job against itself with more money; nothing is written."""
    folder = shelves("den", budget=20)
    before = sorted(folder.iterdir())
    found = typed("den", "--budget", "+40")
    assert found.exit_code == 0, found.output
    assert found.output.startswith("A  den\nB  den with --budget +40\n")
    assert sorted(folder.iterdir()) == before


def test_two_jobs_and_json(tmp_path: Path) -> None:
    """Two folders; under --json one object with what differs by id."""
    shelves("den", budget=20)
    shelves("loft", budget=60)
    found = json.loads(typed("den", "loft", "--json").output)
    assert list(found) == list(beside_object(seen(tmp_path)))
    assert (found["first"]["name"], found["second"]["name"]) == ("den", "loft")
    assert found["second"]["improvement"] - found["first"]["improvement"] == 50
    assert [(pair["first"]["id"], pair["second"]["id"]) for pair in found["otherwise"]] == [("a1", "a2")]


def test_dearer_shop() -> None:
    """Another catalogue for the second: the price is what differs, and the files are named."""
    folder = shelves("den", budget=60)
    dear = json.loads((folder / "catalog.yaml").read_text())
    dear["products"][1]["price"] = 58.5
    (folder / "dear.yaml").write_text(json.dumps(dear))
    said = typed("den", "--catalog", "den/dear.yaml").output
    assert "  Oak shelf: A 60.00, B 58.50\n" in said
    assert "  catalogue               catalog.yaml         dear.yaml\n" in said


def test_misuse() -> None:
    """Nothing to compare with, no folder, a folder of jobs, two currencies, no such brief: 2, and why."""
    shelves("den", budget=20)
    euro = shelves("euro", budget=20, currency="EUR")
    catalog = json.loads((euro / "catalog.yaml").read_text())
    (euro / "catalog.yaml").write_text(json.dumps({**catalog, "currency": "EUR"}))
    wanted = {
        ("den",): "Name a second job, or what is to be otherwise: --budget, --hours, --session, --catalog or --brief.",
        ("den", "attic"): "attic is no folder.",
        (".", "den"): ". holds 2 jobs. Compare one of them, such as den.",
        ("den", "euro"): "The two jobs are in USD and EUR: money can only be compared in one currency.",
        ("den", "--brief", "x.yaml"): "There is no file x.yaml.",
    }
    for words, why in wanted.items():
        found = typed(*words)
        assert (found.exit_code, found.stderr.strip()) == (2, why)


def test_problems_of_both() -> None:
    """What is wrong in either is told at once: 3."""
    shelves("den", budget=20)
    found = typed("den", "--budget", "lots", "--session", "x")
    assert found.exit_code == 3
    assert found.stderr.splitlines()[-1] == "2 problems in 2 files. Nothing was written."


def test_no_plan() -> None:
    """One of the two has no plan: 1, and which."""
    shelves("den", budget=20, must=["shelf"])
    found = typed("den", "--budget", "5")
    assert found.exit_code == 1
    assert found.stderr.startswith("den with --budget 5: no plan.\n")


def test_options_in_order() -> None:
    """The second is called by the options that were typed."""
    words = CompareWords(hours="4", catalog="c.yaml")
    assert words.typed == (("--hours", "4"), ("--catalog", "c.yaml"))
