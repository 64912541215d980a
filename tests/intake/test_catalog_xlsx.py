"""A catalog typed into the workbook: messages name the cell."""

from __future__ import annotations

import io
from datetime import date
from pathlib import Path

import pytest
from openpyxl import load_workbook
from openpyxl.worksheet.worksheet import Worksheet

from budgetfix.catalog.models import Catalog, WorkStep
from budgetfix.exports.catalog_book import catalog_book
from budgetfix.intake.catalog_build import build_catalog
from budgetfix.intake.catalog_raw import raw_xlsx_catalog

Typed = dict[str, dict[str, str | int | float | date]]


STEP = "minutes such as 0.5, or {low: 0.5, likely: 0.75, high: 1.5}"


def read(folder: Path, typed: Typed, rename: dict[str, str] | None = None) -> tuple[Catalog, list[str]]:
    """A blank catalog workbook with some cells typed into it, read."""
    book = load_workbook(io.BytesIO(catalog_book(Catalog(), unit="cm", currency="EUR")))
    for title, cells in typed.items():
        page = book[title]
        assert isinstance(page, Worksheet)
        for cell, value in cells.items():
            page[cell] = value
    for old, new in (rename or {}).items():
        book[old].title = new
    path = folder / "catalog.xlsx"
    book.save(path)
    catalog, problems = build_catalog(raw_xlsx_catalog(path), "EUR", "mm", ("f1",), ("rug-pad",))
    return catalog, [str(problem) for problem in sorted(problems)]


def test_a_blank_book_is_an_empty_catalog(tmp_path: Path) -> None:
    """Nothing typed, nothing offered, nothing wrong."""
    assert read(tmp_path, {}) == (Catalog(currency="EUR"), [])


def test_steps_have_a_sheet_of_their_own(tmp_path: Path) -> None:
    """Minutes in order of the rows, one figure or three; a remedy without rows may say its hours itself."""
    catalog, problems = read(
        tmp_path,
        {
            "Remedies": {"A6": "m1", "E6": "f1:1", "A7": 2, "E7": "f1:0.5", "G7": 0.5},
            "Steps": {"A6": "m1", "D6": 10, "A7": "m1", "C7": 5, "D7": 10, "E7": 30, "F7": 1, "G7": 1.5, "H7": 2},
        },
    )
    assert problems == []
    assert catalog.remedies[0].steps == (
        WorkStep(minutes=10),
        WorkStep(minutes=15, low=5, likely=10, high=30, wait_sessions=1, wait_minutes=90, people=2),
    )
    assert (catalog.remedies[1].remedy, catalog.remedies[1].steps) == ("2", (WorkStep(minutes=30),))


def test_columns_are_found_by_heading(tmp_path: Path) -> None:
    """Someone may swap two columns; units on top hold for bare numbers."""
    catalog, problems = read(
        tmp_path,
        {"Products": {"A4": "Price", "F4": "Product", "A6": 5, "F6": "rug", "N6": 160, "O6": "7 ft", "E3": "in"}},
    )
    assert problems == []
    assert (catalog.products[0].product, catalog.products[0].price_minor) == ("rug", 500)
    assert (catalog.products[0].width, catalog.products[0].width_to) == (4064.0, 2133.6)


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        (
            {"Products": {"A6": "p", "F6": "12,5O"}},
            "catalog.xlsx [Products!F6] found '12,5O', wanted a price such as 12.50; write no commas",
        ),
        ({"Products": {"A6": "p"}}, "catalog.xlsx [Products!F6] found nothing, wanted a price such as 12.50"),
        ({"Products": {"F6": 3}}, "catalog.xlsx [Products!A6] found nothing, wanted a short name, used once"),
        (
            {"Products": {"A6": "p", "F6": 3, "E6": "mill"}},
            "catalog.xlsx [Products!E6] found 'mill', wanted the name of a shop",
        ),
        (
            {"Products": {"A6": "p", "F6": "=1+1"}},
            "catalog.xlsx [Products!F6] found a formula whose result was never stored, wanted a price such as 12.50",
        ),
        (
            {"Products": {"A6": "p", "F6": date(2026, 5, 8)}},
            "catalog.xlsx [Products!F6] found a date, wanted a price such as 12.50",
        ),
        (
            {"Remedies": {"A6": "m", "E6": "f1:1", "G6": 1}, "Steps": {"A6": "m", "D6": 5}},
            "catalog.xlsx [Remedies!G6] found 1, wanted either steps or hours, not both",
        ),
        (
            {"Remedies": {"A6": "m", "E6": "f1:1"}, "Steps": {"A6": "mm", "D6": 5}},
            "catalog.xlsx [Steps!A6] found 'mm', wanted a remedy from the sheet Remedies",
        ),
        (
            {"Remedies": {"A6": "m", "E6": "f1:1"}, "Steps": {"A6": "m", "C6": 5, "D6": 6}},
            f"catalog.xlsx [Steps!E6] found nothing, wanted {STEP}; all three: low, likely, high",
        ),
        (
            {"Remedies": {"A6": "m", "E6": "f1:1"}, "Steps": {"A6": "m", "B6": "Paint"}},
            f"catalog.xlsx [Steps!D6] found nothing, wanted {STEP}; all three: low, likely, high",
        ),
        (
            {"Remedies": {"A6": "m", "E6": "f1:1"}, "Steps": {"A6": "m", "C6": 5}},
            f"catalog.xlsx [Steps!D6] found nothing, wanted {STEP}; all three: low, likely, high",
        ),
        (
            {"Remedies": {"A6": "m", "E6": "f1:1"}, "Steps": {"A6": "m", "C6": 5, "D6": 4, "E6": 9}},
            f"catalog.xlsx [Steps!D6] found 4, wanted {STEP}; no less than low",
        ),
        (
            {"Remedies": {"A6": "m", "E6": "f1:1"}, "Steps": {"A6": "m", "C6": 1, "D6": 4, "E6": "9,5"}},
            f"catalog.xlsx [Steps!E6] found '9,5', wanted {STEP}; write a point, not a comma: 9.5",
        ),
        ({"Products": {"B3": "EURO"}}, "catalog.xlsx [Products!B3] found 'EURO', wanted a currency code such as EUR"),
        ({"Products": {"E3": "yd"}}, "catalog.xlsx [Products!E3] found 'yd', wanted one of: in, cm, mm"),
        (
            {"Products": {"A4": "Prodct"}},
            "catalog.xlsx [Products!A4] found the heading 'Prodct', wanted the heading 'Product'",
        ),
    ],
)
def test_what_cannot_be_read(tmp_path: Path, typed: Typed, said: str) -> None:
    """Each message word for word, with the cell."""
    assert said in read(tmp_path, typed)[1]


def test_a_sheet_with_nearly_the_right_title(tmp_path: Path) -> None:
    """A sheet called Product would be skipped without a word: it is told instead."""
    assert read(tmp_path, {}, {"Products": "Product"})[1] == [
        "catalog.xlsx [Product] found a sheet 'Product', "
        "wanted sheets named Products, Remedies, Steps, Tools, Shops; did you mean Products?"
    ]


def test_no_workbook_at_all(tmp_path: Path) -> None:
    """A text file that was given the name of a workbook."""
    path = tmp_path / "catalog.xlsx"
    path.write_text("remedy,answers\n", encoding="utf-8")
    assert [str(problem) for problem in raw_xlsx_catalog(path).problems] == [
        "catalog.xlsx found a file that is no workbook, wanted a workbook saved as .xlsx"
    ]


def test_what_only_a_workbook_does(tmp_path: Path) -> None:
    """A tick for a name is refused, also beside steps; binary dust on a sum of prices is none of the user's."""
    typed: Typed = {
        "Remedies": {"A6": True, "E6": "f1:1"},
        "Steps": {"A6": "m", "D6": 30},
        "Products": {"A6": "p", "F6": 0.1 + 0.2},
    }
    catalog, problems = read(tmp_path, typed)
    assert catalog.products[0].price_minor == 30
    assert problems == [
        "catalog.xlsx [Remedies!A6] found yes, wanted words",
        "catalog.xlsx [Steps!A6] found 'm', wanted a remedy from the sheet Remedies",
    ]


def test_steps_of_a_remedy_that_cannot_be_read(tmp_path: Path) -> None:
    """Their own mistakes are told in the same run, not only once the remedy is mended."""
    typed: Typed = {"Remedies": {"A6": True, "E6": "f1:1"}, "Steps": {"A6": "m", "D6": "long"}}
    assert read(tmp_path, typed)[1] == [
        "catalog.xlsx [Remedies!A6] found yes, wanted words",
        "catalog.xlsx [Steps!A6] found 'm', wanted a remedy from the sheet Remedies",
        f"catalog.xlsx [Steps!D6] found 'long', wanted {STEP}",
    ]
