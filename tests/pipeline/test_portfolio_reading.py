"""All jobs of a folder read, and every problem told from that folder."""

from __future__ import annotations

from pathlib import Path

import pytest
from openpyxl import Workbook

from budgetfix.base.problems import FileProblem, FilesRefused, Place
from budgetfix.pipeline.portfolio_reading import read_jobs, within
from tests.pipeline.listed_job import TODAY
from tests.pipeline.street import JUNE, read_street, write_house, write_street

NAMES = ("elm-street", "oak-lane", "pine")


def test_jobs_go_by_their_folders(tmp_path: Path) -> None:
    """And know the file that their catalogue is, however they name it."""
    write_street(tmp_path)
    jobs = read_street(tmp_path)
    assert tuple(job.name for job in jobs) == NAMES
    assert {job.catalog_file for job in jobs} == {str((tmp_path / "catalog.yaml").resolve())}


def test_a_problem_is_told_from_the_folder_of_all() -> None:
    """The job's folder stands before the file."""
    problem = FileProblem(Place("brief.yaml", label="line 3"), "x", "y")
    assert str(within("elm", problem)) == "elm/brief.yaml [line 3] found x, wanted y"


def test_a_catalogue_outside_is_told_once_by_its_path(tmp_path: Path) -> None:
    """Also where it stands above the folder of all jobs."""
    write_street(tmp_path / "street")
    (tmp_path / "ours.yaml").write_text('{"products": [{"product": "rug"}]}')
    for name in NAMES:
        write_house(tmp_path / "street" / name, (1, 1), JUNE, catalog="../../ours.yaml")
    with pytest.raises(FilesRefused) as refused:
        read_jobs(tmp_path / "street", NAMES, TODAY)
    assert [problem.place.file for problem in refused.value.problems] == ["../ours.yaml"]


def test_a_shared_workbook_is_marked_once(tmp_path: Path) -> None:
    """One marked copy, beside the first job that has it."""
    write_street(tmp_path)
    book = Workbook()
    sheet = book.active
    assert sheet is not None
    sheet.title = "Products"
    for row in (["Product", "Price"], ["rug", "dear"]):
        sheet.append(row)
    book.save(tmp_path / "catalog.xlsx")
    for name in NAMES:
        write_house(tmp_path / name, (1, 1), JUNE, catalog="../catalog.xlsx")
    with pytest.raises(FilesRefused) as refused:
        read_jobs(tmp_path, NAMES, TODAY)
    assert refused.value.marked == ("elm-street/catalog.marked.xlsx",)
    assert [path.name for path in tmp_path.rglob("*.marked.xlsx")] == ["catalog.marked.xlsx"]
