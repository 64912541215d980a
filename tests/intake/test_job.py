"""A job folder: which files are read, and every problem of all of them at once."""

from __future__ import annotations

import json
import os
from collections.abc import Mapping
from datetime import date
from pathlib import Path

import pytest

from budgetfix.base.problems import Place
from budgetfix.brief.models import ListedFault
from budgetfix.catalog.models import Catalog
from budgetfix.exports.catalog_book import catalog_book
from budgetfix.exports.survey_book import survey_book
from budgetfix.intake.brief_over import Over
from budgetfix.intake.job import Job, read_job
from budgetfix.intake.job_names import Known

TODAY = date(2026, 6, 1)
KINDS = ("longer-rod", "rug-pad")
FAULTS = "fault,points\nf1,100\nf2,50\n"
REMEDIES = "remedies: [{remedy: m1, answers: {f1: 1}, pick_one: g}, {remedy: m2, answers: {f2: 1}, needs: [m1]}]\n"
LENGTH = "a length such as 6' 2 1/2\", 74.5 or 188 cm"
SURVEY = """
unit: cm
walls: [{wall: A, length: 400}, {wall: B, length: 500}]
openings: [{name: door, what: door, wall: A, from_left: 300, width: 90}]
rugs: [{name: rug, wall: B, from_left: 100, width: 200, depth: 140, gap: 50}]
faults: [{fault: dim, points: 40}]
brief: {budget: 90, hours: '3; 2', currency: EUR}
"""


def job(folder: Path, files: Mapping[str, str | bytes], over: Over = Over()) -> Job:  # noqa: B008 - frozen
    """The job of a folder with these files."""
    for name, text in files.items():
        (folder / name).write_bytes(text.encode() if isinstance(text, str) else text)
    return read_job(folder, over, TODAY, KINDS)


def said(folder: Path, files: Mapping[str, str | bytes], over: Over = Over()) -> list[str]:  # noqa: B008 - frozen
    """Its problems as people read them."""
    return [str(problem) for problem in job(folder, files, over).problems]


def test_listed_faults_alone(tmp_path: Path) -> None:
    """A list of faults is a job; without brief and catalog nothing is limited and nothing can be done."""
    found = job(tmp_path, {"faults.csv": FAULTS})
    assert found.problems == ()
    assert found.faults == (ListedFault(fault="f1", points=100), ListedFault(fault="f2", points=50))
    assert (found.survey, found.catalog, found.name) == (None, Catalog(), tmp_path.name)
    assert (found.brief.currency, found.brief.ordered, found.notes) == ("USD", TODAY, ())


def test_listed_faults_with_brief_and_catalog(tmp_path: Path) -> None:
    """The path without a survey, whole."""
    brief = "currency: EUR\nbudget: 20\nhours: [1]\nmust: [g]\nnever: [m2]\npriorities: {f1: 2}\n"
    found = job(tmp_path, {"faults.csv": FAULTS, "brief.yaml": brief, "catalog.yaml": REMEDIES})
    assert found.problems == ()
    assert [remedy.remedy for remedy in found.catalog.remedies] == ["m1", "m2"]
    assert (found.brief.budget_minor, found.brief.must, found.brief.never) == (2000, ("g",), ("m2",))


def test_a_measured_room(tmp_path: Path) -> None:
    """Survey, its faults, its money; a catalog's bare lengths are in the survey's unit."""
    catalog = "remedies: [{remedy: m, kind: rug-pad, on: rug, set: {width: 150}}]\n"
    found = job(tmp_path, {"survey.yaml": SURVEY, "catalog.yaml": catalog})
    assert [str(problem) for problem in found.problems] == []
    assert found.survey is not None
    assert (found.brief.budget_minor, found.brief.currency, len(found.brief.hours or ())) == (9000, "EUR", 2)
    assert found.catalog.remedies[0].set == (("width", 1500.0),)
    assert [fault.fault for fault in found.faults] == ["dim"]


def test_both_sources_of_faults(tmp_path: Path) -> None:
    """Faults of the survey and of faults.csv are one list by name; one that stands in both is told."""
    assert [fault.fault for fault in job(tmp_path, {"survey.yaml": SURVEY, "faults.csv": FAULTS}).faults] == [
        "dim", "f1", "f2",
    ]  # fmt: skip
    assert said(tmp_path, {"faults.csv": "fault,points\ndim,1\n"}) == [
        "faults.csv found 'dim', wanted faults that the survey does not list"
    ]


def test_the_workbook_goes_before_the_text(tmp_path: Path) -> None:
    """Where a workbook and a YAML file are both there, the workbook is read, and one line says so."""
    files: dict[str, str | bytes] = {
        "survey.xlsx": survey_book(None, {}, (), unit="cm"),
        "survey.yaml": SURVEY,
        "catalog.xlsx": catalog_book(Catalog(), unit="cm", currency="EUR"),
        "catalog.yaml": REMEDIES,
        "faults.csv": FAULTS,
    }
    found = job(tmp_path, files)
    assert found.notes == (
        "Read survey.xlsx; survey.yaml is there too and was not read.",
        "Read catalog.xlsx; catalog.yaml is there too and was not read.",
    )
    assert found.catalog.remedies == ()


def test_nothing_to_read(tmp_path: Path) -> None:
    """Neither a survey nor faults.csv is a problem."""
    assert said(tmp_path, {"brief.yaml": "budget: 5\n"}) == [
        f"{tmp_path} found no survey, wanted survey.xlsx, survey.yaml or faults.csv"
    ]


def test_a_catalog_from_elsewhere(tmp_path: Path) -> None:
    """The brief names one from the job's folder on; the command line names one from where one stands."""
    inner = tmp_path / "room"
    inner.mkdir()
    (tmp_path / "catalog.yaml").write_text(REMEDIES, encoding="utf-8")
    found = job(inner, {"faults.csv": FAULTS, "brief.yaml": "catalog: ../catalog.yaml\n", "catalog.csv": "remedy\n"})
    assert (found.problems, len(found.catalog.remedies), found.notes) == ((), 2, ())
    (tmp_path / "one.csv").write_text("remedy,answers\nx,f1:1\n", encoding="utf-8")
    there = os.path.relpath(tmp_path / "one.csv")
    assert [remedy.remedy for remedy in job(inner, {}, Over(catalog=there)).catalog.remedies] == ["x"]
    assert [remedy.remedy for remedy in job(inner, {}, Over(catalog="catalog.csv")).catalog.remedies] == []
    assert said(inner, {}, Over(catalog="gone.yaml")) == [
        "--catalog found 'gone.yaml', wanted a catalogue that is there (.xlsx, .yaml or .csv)"
    ]


@pytest.mark.parametrize(
    ("brief", "catalog", "currency", "problems"),
    [
        ("budget: 5\n", "currency: JPY\n", "JPY", []),
        ("currency: EUR\n", "currency: EUR\n", "EUR", []),
        ("currency: EUR\n", "", "EUR", []),
        (
            "currency: EUR\n",
            "currency: USD\n",
            "EUR",
            ["catalog.yaml found USD, wanted one currency: the brief says EUR"],
        ),
        (
            "budget: 5.50\n",
            "currency: JPY\n",
            "JPY",
            ["brief.yaml [line 1] found 5.5, wanted a price such as 12.50; JPY has 0 digits after the point"],
        ),
    ],
)
def test_one_currency(tmp_path: Path, brief: str, catalog: str, currency: str, problems: list[str]) -> None:
    """A brief without a currency takes the catalog's; two that differ are told."""
    files = {"faults.csv": FAULTS, "brief.yaml": brief, "catalog.yaml": catalog + "tools: []\n"}
    found = job(tmp_path, files)
    assert (found.brief.currency, [str(problem) for problem in found.problems]) == (currency, problems)


def test_every_problem_of_every_file(tmp_path: Path) -> None:
    """One run tells all of it, sorted by place; names are only looked up where nothing else was refused."""
    files = {
        "faults.csv": "fault,points\nf1,x\n",
        "brief.yaml": "budget: lots\nmust: [gone]\n",
        "catalog.yaml": "remedies:\n  - {remedy: m1, answers: {f1: 2}, cost: free}\n  - {remedy: m2}\n",
    }
    assert said(tmp_path, files) == [
        "brief.yaml [line 1] found 'lots', wanted a price such as 12.50",
        "catalog.yaml [line 2] found a block of keys, wanted shares of at most 1",
        "catalog.yaml [line 2] found 'free', wanted a price such as 12.50",
        "catalog.yaml [line 3] found nothing, wanted answers to a listed fault, or a kind",
        "faults.csv [B2] found 'x', wanted a whole number, 0 or more",
    ]


def test_names_that_mean_nothing(tmp_path: Path) -> None:
    """Musts, nevers, priorities, shops of errands and rules that nobody knows are told, with the nearest name."""
    brief = """
must: [m1, g1]
never: [rug-pat]
priorities: {f3: 2}
may_worsen: [everything]
errands: [{shops: [mil], hours: 1}]
"""
    files = {"faults.csv": FAULTS, "brief.yaml": brief, "catalog.yaml": "shops: [{shop: mill}]\n" + REMEDIES}
    assert said(tmp_path, files) == [
        "brief.yaml [line 2] found 'g1', wanted the name of a remedy, or a group of which one is picked",
        "brief.yaml [line 3] found 'rug-pat', wanted the name of a remedy, group, kind or product; "
        "did you mean rug-pad?",
        "brief.yaml [line 4] found 'f3', wanted the name of a rule, family, thing or listed fault",
        "brief.yaml [line 5] found 'everything', wanted the name of a rule",
        "brief.yaml [line 6] found 'mil', wanted the name of a shop; did you mean mill?",
    ]


def test_names_in_a_person_s_priorities(tmp_path: Path) -> None:
    """What matters to one of two people is looked up as the household's is, and told at its own line."""
    brief = """
people:
  ann:
    priorities: {f1: 2}
  ben:
    priorities:
      f1: 1
      lihgt: 2
"""
    files = {"faults.csv": FAULTS, "brief.yaml": brief, "catalog.yaml": REMEDIES}
    assert said(tmp_path, files) == [
        "brief.yaml [line 8] found 'lihgt', wanted the name of a rule, family, thing or listed fault; "
        "did you mean light?"
    ]


@pytest.mark.parametrize(
    ("fields", "problem"),
    [
        ("on: rugg", "found 'rugg', wanted a name from the survey; did you mean rug?"),
        ("on: rug, set: {seat: 40}", "found 'seat', wanted a field that rug has in the survey (rugs)"),
        ("on: rug, set: {width: null}", f"found nothing, wanted rug: width as {LENGTH} above 0"),
        ("on: door, set: {what: sofa}", "found 'sofa', wanted door: what as one of: door, opening, window, closet"),
        ("on: rug, changes: [{remove: bed}]", "found 'bed', wanted a name from the survey"),
        ("on: bed, changes: [{add: furniture, item: bed, what: bed, depth: 200, height: 50, wall: A}]", ""),
        ("on: rug, set: {pad: yes}, changes: [{remove: rug}]", ""),
    ],
)  # fmt: skip
def test_things_of_the_survey(tmp_path: Path, fields: str, problem: str) -> None:
    """A remedy can only change what is there, into what it can be; what another remedy brings counts as there."""
    catalog = f"remedies: [{{remedy: m, kind: rug-pad, {fields}}}]\n"
    expected = [f"catalog.yaml [line 1] {problem}"] if problem else []
    assert said(tmp_path, {"survey.yaml": SURVEY, "catalog.yaml": catalog}) == expected


def test_what_is_fitted_later_may_be_named(tmp_path: Path) -> None:
    """In a measured room `must` and `never` may name what the tool will fit itself."""
    brief = "must: [rug-pad/rug]\nnever: [longer-rod/window]\n"
    assert said(tmp_path, {"survey.yaml": SURVEY, "brief.yaml": brief}) == []


def test_a_refused_workbook_is_marked(tmp_path: Path) -> None:
    """Each workbook with a bad cell comes back as a copy to mark it in, also one from another folder."""
    inner = tmp_path / "room"
    inner.mkdir()
    import io

    from openpyxl import load_workbook

    book = load_workbook(io.BytesIO(catalog_book(Catalog(), unit="cm", currency="EUR")))
    book["Products"]["A6"] = "p"
    book["Products"]["F6"] = "12,5O"
    book.save(tmp_path / "shop.xlsx")
    found = job(inner, {"faults.csv": FAULTS, "brief.yaml": "catalog: ../shop.xlsx\ncurrency: EUR\n"})
    assert [name for name, _ in found.marked] == ["shop.marked.xlsx"]
    note = load_workbook(io.BytesIO(found.marked[0][1]))["Products"]["F6"].comment
    assert note is not None
    assert note.text == "Found '12,5O', wanted a price such as 12.50. write no commas"
    assert job(inner, {"brief.yaml": "currency: EUR\n"}).marked == ()


def test_a_large_catalog_of_json(tmp_path: Path) -> None:
    """Nearly two thousand remedies as JSON text are read by the fast way, the same as by the slow one."""
    remedies = [
        {"remedy": f"m{n}", "answers": {"f1": 0.5}, "cost": n / 4, "needs": [f"m{n - 1}"] if n else [], "hours": 0.5}
        for n in range(1900)
    ]
    found = job(tmp_path, {"faults.csv": FAULTS, "catalog.yaml": json.dumps({"remedies": remedies})})
    assert found.problems == ()
    assert len(found.catalog.remedies) == 1900
    assert found.catalog.remedies[1899].cost_minor == 47475


def test_what_a_priority_may_name() -> None:
    """Without a survey: listed faults, beside rules and their families."""
    known = Known(Catalog(), (ListedFault(fault="f1", points=1),), None, KINDS, whole=True)
    assert known.matters[-1] == "f1"
    assert known.remedies == []
    assert Place("a") < Place("b")
