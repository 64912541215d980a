"""The renter's workbooks in `catalog_demo/` are what the writers make today; `make reports` writes them anew."""

from __future__ import annotations

import io
from datetime import date
from pathlib import Path

from openpyxl import load_workbook

from budgetfix.exports.catalog_book import catalog_book
from budgetfix.exports.survey_book import survey_book
from budgetfix.intake.survey_file import read_survey
from budgetfix.pipeline.reading import JobOptions, read

RENTER = Path(__file__).resolve().parents[2] / "catalog_demo" / "renter"


def cells(data: bytes) -> list[tuple[str, str, object]]:
    """Every filled cell of a workbook."""
    return [
        (sheet.title, cell.coordinate, cell.value)
        for sheet in load_workbook(io.BytesIO(data)).worksheets
        for row in sheet.iter_rows()
        for cell in row
        if cell.value is not None
    ]


def books() -> dict[str, bytes]:
    """The two workbooks, made from the survey in YAML and from the catalogue as it is read."""
    file = read_survey(RENTER / "survey.yaml")
    catalog = read(RENTER, JobOptions(), date(2026, 6, 1)).catalog
    return {
        "survey.xlsx": survey_book(file.survey, file.brief_fields, file.faults),
        "catalog.xlsx": catalog_book(catalog, unit="mm", currency="EUR"),
    }


def test_the_workbook_and_the_yaml_are_the_same_room() -> None:
    """Typed into cells or into YAML: one survey."""
    assert read_survey(RENTER / "survey.xlsx").survey == read_survey(RENTER / "survey.yaml").survey


def test_the_workbooks_are_fresh() -> None:
    """Cell by cell what the writers make."""
    for name, made in books().items():
        assert cells(made) == cells((RENTER / name).read_bytes()), f"{name} is stale: make reports"
