"""The catalog's form: one column for each field, read by what `intake` knows."""

from __future__ import annotations

import pytest

from budgetfix.catalog.models import WHATS, Product, Remedy, Shop, Tool, WorkStep
from budgetfix.forms.catalog_form import CATALOG_FORM, CATALOG_SHEETS, CATALOG_TOP, FIELDS_OF
from budgetfix.room.items import ITEM_OF, TABLES

TYPED = {
    "price_minor": "price",
    "cost_minor": "cost",
    "price_low_minor": "price_low",
    "price_high_minor": "price_high",
    "cost_low_minor": "cost_low",
    "cost_high_minor": "cost_high",
    "buy_minor": "buy",
    "hire_minor": "hire_per_session",
    "delivery_minor": "delivery",
    "free_over_minor": "free_over",
    "wait_minutes": "wait_hours",
    "minutes": "likely",
    "steps": "hours",
}
"""Fields of the records whose columns have names of their own."""
WORKED_OUT = {"elsewhere", "price_likely_minor", "cost_likely_minor"}
"""Fields without a column: what is lent elsewhere, and the likely price, which stands under Price itself."""


@pytest.mark.parametrize(
    ("table", "record"),
    [("products", Product), ("tools", Tool), ("shops", Shop), ("remedies", Remedy), ("steps", WorkStep)],
)
def test_every_field_has_a_column(table: str, record: type[Product | Tool | Shop | Remedy | WorkStep]) -> None:
    """What a catalog can hold can be typed into its workbook, and nothing else can."""
    columns = [column.field for column in CATALOG_FORM[table]]
    fields = {TYPED.get(field, field) for field in record.model_fields if field not in WORKED_OUT}
    assert sorted(columns) == sorted(fields | ({"remedy"} if table == "steps" else set()))


@pytest.mark.parametrize("table", sorted(CATALOG_FORM))
def test_headings_and_fields_stand_once(table: str) -> None:
    """Columns are found by their headings, so each heading stands once on its sheet."""
    headings = [column.heading.lower() for column in CATALOG_FORM[table]]
    fields = [column.field for column in CATALOG_FORM[table]]
    assert len(headings) == len(set(headings))
    assert len(fields) == len(set(fields))


def test_only_what_is_needed_is_needed() -> None:
    """Needed are ids, a product's price, and the minutes of a step that somebody lists."""
    needed = {sheet.key: [column.field for column in sheet.columns if column.needed] for sheet in CATALOG_SHEETS}
    assert needed == {
        "products": ["product", "price"],
        "remedies": ["remedy"],
        "steps": ["remedy", "likely"],
        "tools": ["tool"],
        "shops": ["shop"],
    }


def test_labels_on_top_are_no_headings() -> None:
    """The labels of currency and unit are not taken for headings, nor headings for labels."""
    headings = {column.heading.lower() for column in CATALOG_FORM["products"]}
    assert not headings & {column.heading.lower() for column in CATALOG_TOP}


def test_sorts_of_products_are_offered() -> None:
    """The drop-down of a product's sort offers every sort that a kind looks for."""
    assert [column.choices for column in CATALOG_FORM["products"] if column.field == "what"] == [WHATS]


@pytest.mark.parametrize("table", TABLES)
def test_fields_that_a_remedy_may_set(table: str) -> None:
    """They are the survey's own, by table: none that the thing does not have."""
    assert set(FIELDS_OF[table]) <= set(ITEM_OF[table].model_fields)  # type: ignore[index]
    assert "name" in FIELDS_OF[table]
