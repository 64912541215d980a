"""The catalog as a workbook: read back cell by cell, and as a catalog."""

from __future__ import annotations

import io
from datetime import date
from fractions import Fraction
from pathlib import Path

import pytest
from openpyxl import Workbook, load_workbook

from budgetfix.catalog.models import Catalog, Product, Remedy, SetChange, Shop, Tool, WorkStep
from budgetfix.exports.catalog_book import catalog_book
from budgetfix.forms.catalog_form import CATALOG_SHEETS, OPTIONAL_FIELDS, RANGE_FIELDS
from budgetfix.intake.catalog_build import build_catalog
from budgetfix.intake.catalog_raw import raw_xlsx_catalog
from budgetfix.intake.catalog_yaml import read_catalog_bytes
from budgetfix.pipeline.demo_data import starter_catalog

F = Fraction
CATALOG = Catalog(
    currency="EUR",
    tools=(Tool(tool="drill", name="cordless drill", own=True, buy_minor=5900, hire_minor=1400),),
    shops=(Shop(shop="mill", name="=Mill", delivery_minor=590, free_over_minor=6000, tax=F(33, 400), return_days=30),),
    products=(
        Product(product="paint", name="wall paint", shop="mill", price_minor=2250, pack=F(5, 2), unit="L"),
        Product(
            product="rug",
            price_minor=9900,
            what="rug",
            width=2280.0,
            depth=1587.5,
            example=True,
            on_hand=F(1),
            lead_days=4,
            return_days=0,
            take_along="the tape; the width of the stairs",
        ),
    ),
    remedies=(
        Remedy(
            remedy="m1",
            name="Lay a rug",
            kind="lay-rug",
            on="rug",
            set=(("pad", True), ("width", 2280.0)),
            changes=(SetChange(item="old lamp", remove=True), SetChange(item="screen", set=(("bottom", 554.5),))),
            uses=(("rug", F(1)),),
            cost_minor=350,
            pick_one="g1",
            people=2,
            steps=(
                WorkStep(minutes=55, low=30, likely=45, high=90),
                WorkStep(minutes=10, wait_sessions=1, wait_minutes=90, people=1, help=10),
            ),
            cares=("lift with two",),
        ),
        Remedy(remedy="m2", name="m2", answers=(("f1", F(-1, 4)),), needs=("m1",), tools=("drill",), phase=3),
    ),
)


def opened(data: bytes) -> Workbook:
    """The book as openpyxl sees it."""
    return load_workbook(io.BytesIO(data))


@pytest.mark.parametrize("unit", ["in", "cm", "mm"])
def test_a_catalog_reads_back(tmp_path: Path, unit: str) -> None:
    """Written in any unit, the workbook is read as the same catalog."""
    path = tmp_path / "catalog.xlsx"
    path.write_bytes(catalog_book(CATALOG, unit=unit, currency="EUR"))
    found, problems = build_catalog(raw_xlsx_catalog(path), "USD", "mm", ("f1",), ("lay-rug",))
    assert problems == []
    assert found == CATALOG


def test_stock_reads_back(tmp_path: Path) -> None:
    """One piece from stock brings the columns for stock, and all that is known of it is read again."""
    rug = Product(
        product="s01",
        price_minor=6000,
        stock=0,
        place="bay 2",
        weight_kg=F(29, 2),
        free_from=date(2026, 6, 1),
        free_until=date(2026, 8, 31),
        term_days=30,
        least_days=14,
    )
    path = tmp_path / "catalog.xlsx"
    path.write_bytes(catalog_book(Catalog(currency="EUR", products=(rug,)), unit="in", currency="EUR"))
    found, problems = build_catalog(raw_xlsx_catalog(path), "USD", "mm", (), ())
    assert problems == []
    assert found.products == (rug,)
    heads = [cell.value for cell in opened(path.read_bytes())["Products"][4]]
    assert heads == [column.heading for column in CATALOG_SHEETS[0].columns if column.field not in RANGE_FIELDS]


@pytest.mark.parametrize("currency", ["EUR", "JPY", "BHD"])
def test_the_starter_reads_back(tmp_path: Path, currency: str) -> None:
    """The starter's prices are the same numbers in every currency, and it has no problems."""
    starter = read_catalog_bytes(starter_catalog(), "catalog.yaml", currency)
    path = tmp_path / "catalog.xlsx"
    path.write_bytes(catalog_book(starter, unit="in", currency=currency))
    found, problems = build_catalog(raw_xlsx_catalog(path), currency, "in", (), ())
    assert problems == []
    assert (found.products, found.shops, found.tools) == (starter.products, starter.shops, starter.tools)


def test_same_catalog_same_bytes() -> None:
    """Two builds are equal to the last byte."""
    assert catalog_book(CATALOG, unit="cm", currency="EUR") == catalog_book(CATALOG, unit="cm", currency="EUR")


def test_cells() -> None:
    """What stands where: title, how to fill in, currency and unit, headings, hints, and the first line."""
    book = opened(catalog_book(CATALOG, unit="cm", currency="EUR"))
    assert book.sheetnames == ["Products", "Remedies", "Steps", "Tools", "Shops", "Lists"]
    page = book["Products"]
    assert [page[cell].value for cell in ("A1", "A3", "B3", "D3", "E3")] == [
        "Products", "Currency", "EUR", "A bare number means", "cm",
    ]  # fmt: skip
    assert [cell.value for cell in page[4]] == [
        column.heading
        for column in CATALOG_SHEETS[0].columns
        if not any(column.field in group for group in OPTIONAL_FIELDS)
    ]
    assert [page[cell].value for cell in ("A6", "B6", "F6", "G6", "M6", "A7", "K7", "N7", "P7")] == [
        "paint", "wall paint", 22.5, 2.5, None, "rug", 0, 228, 158.75,
    ]  # fmt: skip
    assert book["Remedies"]["O6"].value == "pad = yes; width = 228"
    assert [cell.value for cell in book["Steps"][6]][:5] == ["m1", None, 30, 45, 90]


def test_words_that_look_like_formulas_stay_words() -> None:
    """A name that starts with = is text, not a formula."""
    cell = opened(catalog_book(CATALOG, unit="cm", currency="EUR"))["Shops"]["B6"]
    assert (cell.value, cell.data_type) == ("=Mill", "s")


@pytest.mark.parametrize(("currency", "shape", "paper"), [("USD", "#,##0.00_)", 1), ("JPY", "#,##0_)", 9)])
def test_prices_and_paper_follow_the_currency(currency: str, shape: str, paper: int) -> None:
    """Digits after the point by the currency; Letter where its home prints on Letter, else A4."""
    page = opened(catalog_book(CATALOG.model_validate({}), unit="in", currency=currency))["Products"]
    assert (page["F6"].number_format, int(page.page_setup.paperSize or 0)) == (shape, paper)


def test_form() -> None:
    """Headings: dark where needed, straw where they apply; panes frozen, headings repeat, one hidden list of words."""
    book = opened(catalog_book(CATALOG, unit="cm", currency="EUR"))
    page = book["Products"]
    assert [page[cell].fill.start_color.rgb for cell in ("A4", "B4", "F4")] == ["FF1F4E4A", "FFEFEBDD", "FF1F4E4A"]
    assert (page.freeze_panes, page.print_title_rows, page.print_title_cols) == ("B6", "$4:$5", "$A:$A")
    assert page.oddFooter is not None
    assert (page.page_setup.orientation, page.oddFooter.left.text) == ("landscape", "&A")
    assert book["Lists"].sheet_state == "hidden"
    assert sorted(book.defined_names) == ["products_what", "remedy_names", "shop_names", "yes_no"]
    lists = {rule.formula1 for rule in page.data_validations.dataValidation}
    assert lists == {"products_what", "shop_names", "yes_no", '"in,cm,mm"'}


def test_empty_lines_stand_ready() -> None:
    """There is room to type below what is filled in, within the drop-downs and the list of names."""
    book = opened(catalog_book(CATALOG, unit="cm", currency="EUR"))
    assert book.defined_names["shop_names"].attr_text == "Shops!$A$6:$A$22"
    assert book["Shops"]["A21"].border.left.style == "thin"
