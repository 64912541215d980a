"""Stock and hire in a catalogue's files: every field read, every wrong value told with its place."""

from __future__ import annotations

from datetime import date, datetime
from fractions import Fraction
from pathlib import Path

import pytest
from openpyxl import Workbook

from budgetfix.catalog.models import Product
from budgetfix.intake.catalog_build import build_catalog
from budgetfix.intake.catalog_raw import raw_xlsx_catalog, raw_yaml_catalog
from budgetfix.intake.catalog_stock import stock_fields


def read(folder: Path, fields: str) -> tuple[tuple[Product, ...], list[str]]:
    """One product and its problems as people read them."""
    path = folder / "catalog.yaml"
    path.write_text(f"products:\n  - {{product: rug, price: 60, {fields}}}\n", encoding="utf-8")
    catalog, problems = build_catalog(raw_yaml_catalog(path), "USD", "in", (), ())
    return catalog.products, [str(problem) for problem in sorted(problems)]


def test_every_field(tmp_path: Path) -> None:
    """How many there are, where, how heavy, when free, and for how long the price is."""
    fields = (
        "stock: 2, place: bay 2, weight_kg: 14.5, free_from: 2026-06-01, free_until: '2026-08-31', "
        "term_days: 30, least_days: 30"
    )
    found, problems = read(tmp_path, fields)
    assert problems == []
    assert found[0] == Product(
        product="rug",
        price_minor=6000,
        stock=2,
        place="bay 2",
        weight_kg=Fraction(29, 2),
        free_from=date(2026, 6, 1),
        free_until=date(2026, 8, 31),
        term_days=30,
        least_days=30,
    )
    assert stock_fields.__doc__


def test_nothing_is_needed(tmp_path: Path) -> None:
    """A product that says nothing of stock is sold without limit, for good."""
    found, problems = read(tmp_path, "name: Rug")
    assert problems == []
    assert (found[0].stock, found[0].term_days, found[0].weight_kg, found[0].place) == (None, None, None, "")


DAY = "a date such as 2026-06-04"
DAYS = "a number of days, 1 or more"


@pytest.mark.parametrize(
    ("fields", "said"),
    [
        ("stock: 1.5", "found 1.5, wanted a whole number, 0 or more"),
        ("stock: -1", "found -1, wanted a whole number, 0 or more"),
        ("weight_kg: heavy", "found 'heavy', wanted a number such as 2.5"),
        ("weight_kg: -2", "found -2, wanted a number such as 2.5; it cannot be below 0"),
        ("place: [bay, 2]", "found a list, wanted words"),
        ("free_from: soon", f"found 'soon', wanted {DAY}; a date such as 2026-06-06"),
        (
            "free_from: 2026-06-04, free_until: 2026-06-03",
            "found a date, wanted a date no earlier than free_from",
        ),
        ("term_days: 0", f"found 0, wanted {DAYS}"),
        ("term_days: 7, least_days: 0", f"found 0, wanted {DAYS}"),
        ("least_days: 30", "found 30, wanted `term_days` beside it: the days that the price is for"),
        ("stocks: 1", "found 'stocks', wanted a field that is known here; did you mean stock?"),
    ],
)
def test_wrong_values(tmp_path: Path, fields: str, said: str) -> None:
    """Each message, word for word: where, what was found, what was wanted."""
    _, problems = read(tmp_path, fields)
    assert problems == [f"catalog.yaml [line 2] {said}"]


def test_a_workbook_with_real_dates(tmp_path: Path) -> None:
    """A spreadsheet keeps dates as dates; they are read as the same days."""
    book = Workbook()
    page = book.active
    assert page is not None
    page.title = "Products"
    page.append(["Product", "Price", "In our store", "Stands at", "Pack weighs", "Free from", "Price is for"])
    page.append(["rug", 60, 1, "bay 2", 14, datetime(2026, 6, 1), 30])  # noqa: DTZ001 - a workbook holds no time zone
    path = tmp_path / "catalog.xlsx"
    book.save(path)
    catalog, problems = build_catalog(raw_xlsx_catalog(path), "USD", "in", (), ())
    assert problems == []
    rug = catalog.products[0]
    assert (rug.stock, rug.place, rug.weight_kg) == (1, "bay 2", Fraction(14))
    assert (rug.free_from, rug.term_days) == (date(2026, 6, 1), 30)
