"""Prices of which a range is known: read from YAML, CSV and workbooks, planned on their mean, written out again."""

from __future__ import annotations

from pathlib import Path

import pytest

from budgetfix.base.problems import FileProblem
from budgetfix.brief.stay import Stay
from budgetfix.catalog.models import Catalog, Product
from budgetfix.catalog.stay import staying
from budgetfix.exports.catalog_book import catalog_book
from budgetfix.forms.catalog_form import RANGE_FIELDS
from budgetfix.intake.catalog_build import build_catalog
from budgetfix.intake.catalog_prices import WANTED_THREE
from budgetfix.intake.catalog_raw import RawCatalog, raw_csv_catalog, raw_xlsx_catalog, raw_yaml_catalog
from tests.exports.plan_sheets import opened

YAML = """
currency: EUR
products:
  - {product: rug, price: {low: 20, likely: 22, high: 30}}
  - {product: pad, price: 9.00, price_low: 8.50, price_high: 10.51}
  - {product: rod, price: 12.50}
  - {product: pin, price: {low: 3, likely: 3, high: 3}}
remedies:
  - {remedy: m1, answers: {f1: 1}, cost: {low: 100, likely: 100, high: 150.01}}
  - {remedy: m2, answers: {f1: 1}, cost: 5}
"""
WANTED = "wanted a price such as 12.50, or {low: 20, likely: 22, high: 30}"


def built(raw: RawCatalog) -> tuple[Catalog, list[str]]:
    """A catalogue and its problems as people read them."""
    catalog, problems = build_catalog(raw, "EUR", "mm", ["f1"], ())
    told: list[FileProblem] = [*raw.problems, *problems]
    return catalog, [str(problem) for problem in sorted(dict.fromkeys(told))]


def read(folder: Path, text: str) -> tuple[Catalog, list[str]]:
    """A catalogue of a YAML text."""
    path = folder / "catalog.yaml"
    path.write_text(text, encoding="utf-8")
    return built(raw_yaml_catalog(path))


def figures(product: Product) -> tuple[int, int | None, int | None, int | None]:
    """Planned, low, likely, high."""
    return product.price_minor, product.price_low_minor, product.price_likely_minor, product.price_high_minor


def test_planned_on_the_mean_half_up(tmp_path: Path) -> None:
    """20, 22, 30 are planned at 24.00; 8.50, 9.00, 10.51 at 9.34 (28.01 / 3); three times one price is one price."""
    catalog, problems = read(tmp_path, YAML)
    assert problems == []
    assert [figures(product) for product in catalog.products] == [
        (2400, 2000, 2200, 3000),
        (934, 850, 900, 1051),
        (1250, None, None, None),
        (300, None, None, None),
    ]
    costs = [
        (one.cost_minor, one.cost_low_minor, one.cost_likely_minor, one.cost_high_minor) for one in catalog.remedies
    ]
    assert costs == [(11667, 10000, 10000, 15001), (500, None, None, None)]


def test_the_workbook_holds_the_likely_price_with_low_and_high_beside_it(tmp_path: Path) -> None:
    """Written out as a workbook and read again it is the same catalogue."""
    catalog, _ = read(tmp_path, YAML)
    path = tmp_path / "catalog.xlsx"
    path.write_bytes(catalog_book(catalog, unit="mm", currency="EUR"))
    page = opened(path.read_bytes())["Products"]
    heads = [cell.value for cell in page[4]]
    at = heads.index("Price")
    assert heads[at : at + 3] == ["Price", "Price low", "Price high"]
    assert [cell.value for cell in page[6]][at : at + 3] == [22, 20, 30]
    assert page.cell(6, at + 2).number_format == page.cell(6, at + 1).number_format
    again, problems = built(raw_xlsx_catalog(path))
    assert problems == []
    assert (again.products, again.remedies[0].cost_high_minor) == (catalog.products, 15001)
    assert again.remedies[0].cost_minor == catalog.remedies[0].cost_minor


def test_no_columns_for_ranges_without_ranges(tmp_path: Path) -> None:
    """A catalogue with one price for each thing has the sheets that it always had."""
    catalog, _ = read(tmp_path, "products: [{product: rod, price: 12.50}]\n")
    book = opened(catalog_book(catalog, unit="mm", currency="EUR"))
    shown = {str(cell.value) for page in (book["Products"], book["Remedies"]) for cell in page[4]}
    assert shown.isdisjoint({"Price low", "Price high", "Cost low", "Cost high"})
    assert len(RANGE_FIELDS) == 4


def test_a_table_of_remedies(tmp_path: Path) -> None:
    """In catalog.csv low and high stand in columns of their own."""
    path = tmp_path / "catalog.csv"
    path.write_text("remedy,answers,cost,cost_low,cost_high\nm1,f1:1,22,20,30\nm2,f1:1,5,,\n", encoding="utf-8")
    catalog, problems = built(raw_csv_catalog(path))
    assert problems == []
    assert [(one.cost_minor, one.cost_low_minor) for one in catalog.remedies] == [(2400, 2000), (500, None)]


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        ("price: {low: 20, high: 30}", f"found nothing, {WANTED}; all three: low, likely, high"),
        ("price: {low: 23, likely: 22, high: 30}", f"found 22, {WANTED}; no less than low"),
        ("price: {low: 20, likely: 22, high: 21}", f"found 21, {WANTED}; no less than likely"),
        ("price: {low: -1, likely: 22, high: 30}", f"found -1, {WANTED}; money cannot be below 0"),
        ("price: {low: 1, likely: 2, high: 3, top: 4}", f"found 'top', {WANTED}; known here: low, likely, high"),
        ("price: 22, price_low: 20", "found nothing, wanted all three: price_low, price, price_high"),
        ("price: 22, price_low: 23, price_high: 30", "found 23, wanted no more than price"),
        ("price: 22, price_low: 20, price_high: 21", "found 21, wanted no less than price"),
        (
            "price: {low: 20, likely: 22, high: 30}, price_high: 31",
            "found 31, wanted nothing: `price` says it already",
        ),
    ],
)
def test_what_is_wrong_is_told(tmp_path: Path, typed: str, told: str) -> None:
    """A figure that is missing, out of order, below 0, said twice, or not known."""
    _, problems = read(tmp_path, f"products: [{{product: rug, {typed}}}]\n")
    assert problems == [f"catalog.yaml [line 1] {told}"]
    assert f"wanted {WANTED_THREE}" == WANTED


def test_a_hired_piece_has_its_range_for_the_stay() -> None:
    """Price x terms, all figures alike."""
    product = Product(
        product="vase", price_minor=24, price_low_minor=20, price_likely_minor=22, price_high_minor=30, term_days=7
    )
    stay = Stay.model_validate({"first": "2026-06-01", "until": "2026-06-15"}, strict=False)
    priced = staying(Catalog(products=(product,)), stay).products[0]
    times = priced.price_minor // 24
    assert times >= 2
    assert figures(priced) == (24 * times, 20 * times, 22 * times, 30 * times)
