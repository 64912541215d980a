"""From raw rows to a catalog: every field read, every name linked, every problem with its place."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from fractions import Fraction
from typing import Any, TypeVar

from budgetfix.base.limits import MOST_DAYS
from budgetfix.base.money import digits_of
from budgetfix.base.problems import FileProblem
from budgetfix.base.tape import WANTED_LENGTH, read_length
from budgetfix.catalog.models import WHATS, Catalog, Product, Remedy, Shop, Tool
from budgetfix.forms.catalog_form import CATALOG_FORM, CATALOG_TOP
from budgetfix.intake.catalog_changes import read_changes, read_set
from budgetfix.intake.catalog_links import KEY, link
from budgetfix.intake.catalog_prices import read_price
from budgetfix.intake.catalog_raw import TABLES, RawCatalog
from budgetfix.intake.catalog_steps import read_alone, sheet_steps, steps_of
from budgetfix.intake.catalog_stock import stock_fields
from budgetfix.intake.catalog_things import link_things
from budgetfix.intake.how_much import catalog_too_large
from budgetfix.intake.raw_rows import close_to
from budgetfix.intake.reader import WANTED_HANDS, Record, as_hands, as_share, unknown_fields
from budgetfix.room.survey import Survey

T = TypeVar("T")
EXTRA = {"remedies": ("steps", "minutes"), "steps": ("hours", "minutes")}
SIZES = ("width", "width_to", "depth", "height", "drop", "lead")
WORDS = ("name", "unit", "label", "what", "heading", "cloth", "take_along")
FIGURES = ("lumens", "kelvin", "carries")


def build_catalog(
    raw: RawCatalog,
    currency: str,
    unit: str,
    faults: Iterable[str],
    kinds: tuple[str, ...],
    survey: Survey | None = None,
) -> tuple[Catalog, list[FileProblem]]:
    """The catalog and all of its problems. `currency`, `unit`: what holds where the file says nothing.

    With a `survey`, the things that remedies name are looked up in it.
    """
    problems = list(raw.problems)
    large = catalog_too_large(raw)
    if large:
        return Catalog(), [*problems, *large]
    top = Record(raw.top, problems)
    unknown_fields(top, [*(column.field for column in CATALOG_TOP), *TABLES], raw.top.cells)
    own_currency = top.text("currency").upper() or None
    money = own_currency or currency
    try:
        digits_of(money)
    except KeyError:
        top.problem("currency", "a currency code such as EUR")
        money = "USD"
    bare = top.text("unit") or unit
    if bare not in ("in", "cm", "mm"):
        top.problem("unit", "one of: in, cm, mm")
        bare = "mm"
    steps = sheet_steps(raw, problems)
    catalog = Catalog(
        currency=own_currency,
        tools=_all(raw, "tools", problems, lambda record: _tool(record, money)),
        shops=_all(raw, "shops", problems, lambda record: _shop(record, money)),
        products=_all(raw, "products", problems, lambda record: _product(record, money, bare)),
        remedies=_all(raw, "remedies", problems, lambda record: _remedy(record, money, bare, steps)),
    )
    read_alone(steps, (remedy.remedy for remedy in catalog.remedies))
    link(raw, catalog, tuple(faults), kinds, problems)
    if survey is not None:
        link_things(raw, catalog, survey, problems)
    return catalog, problems


def _all(raw: RawCatalog, table: str, problems: list[FileProblem], read: Callable[[Record], T]) -> tuple[T, ...]:
    known = [column.field for column in CATALOG_FORM[table]] + list(EXTRA.get(table, ()))
    found = []
    for row in raw.rows.get(table, []):
        record = Record(row, problems)
        unknown_fields(record, known, row.cells)
        made = read(record)
        if getattr(made, KEY[table]):
            found.append(made)
    return tuple(found)


def _tool(record: Record, currency: str) -> Tool:
    return Tool(
        tool=record.id("tool"),
        name=record.text("name"),
        own=record.yes("own"),
        buy_minor=record.money("buy", currency),
        hire_minor=record.money("hire_per_session", currency),
    )


def _shop(record: Record, currency: str) -> Shop:
    return Shop(
        shop=record.id("shop"),
        name=record.text("name"),
        delivery_minor=record.money("delivery", currency) or 0,
        free_over_minor=record.money("free_over", currency),
        tax=record.read("tax", Fraction(0), as_share, "a share such as 8.25%"),
        markup=record.read("markup", Fraction(0), as_share, "a share such as 15%"),
        return_days=_days(record, "return_days"),
    )


def _product(record: Record, currency: str, unit: str) -> Product:
    product = record.id("product")
    if not record.has("price") and not record.has("price_low") and not record.has("price_high"):
        record.problem("price", "a price such as 12.50")
    price = read_price(record, "price", currency)
    pack = record.number("pack", Fraction(1))
    if pack <= 0:
        record.problem("pack", "a number above 0")
    given: dict[str, Any] = {name: _length(record, name, unit) for name in SIZES}
    given |= {name: float(record.number(name, Fraction(0))) if record.has(name) else None for name in FIGURES}
    given |= {name: record.text(name) for name in WORDS}
    if given["what"] and given["what"] not in WHATS:
        record.problem("what", f"one of: {', '.join(WHATS)}", close_to(given["what"], list(WHATS)))
    return Product(
        product=product,
        shop=record.text("shop") or None,
        price_minor=price.planned,
        price_low_minor=price.low,
        price_likely_minor=price.likely,
        price_high_minor=price.high,
        pack=pack if pack > 0 else Fraction(1),
        on_hand=record.number("on_hand", Fraction(0)),
        lead_days=record.whole("lead_days", 0, MOST_DAYS),
        return_days=_days(record, "return_days"),
        example=record.yes("example"),
        round=record.yes("round"),
        **given,
        **stock_fields(record),
    )


def _days(record: Record, field: str) -> int | None:
    return record.whole(field, 0, MOST_DAYS) if record.has(field) else None


def _length(record: Record, field: str, unit: str) -> float | None:
    return record.read(field, None, lambda value: read_length(value, unit), WANTED_LENGTH)


def _remedy(record: Record, currency: str, unit: str, steps: dict[str, list[Record]]) -> Remedy:
    remedy = record.id("remedy")
    if not record.has("answers") and not record.has("kind"):
        record.problem("answers", "answers to a listed fault, or a kind")
    if record.has("set") and not record.has("on"):
        record.problem("set", "`on` beside it: the name of the thing that is set")
    phase = record.whole("phase", 0) if record.has("phase") else None
    cost = read_price(record, "cost", currency)
    return Remedy(
        remedy=remedy,
        name=record.text("name") or remedy,
        answers=record.pairs("answers", negative=True),
        kind=record.text("kind") or None,
        on=record.text("on") or None,
        set=read_set(record, "set", unit),
        changes=read_changes(record, "changes", unit),
        cost_minor=cost.planned,
        cost_low_minor=cost.low,
        cost_likely_minor=cost.likely,
        cost_high_minor=cost.high,
        uses=record.pairs("uses"),
        tools=record.names("tools"),
        pick_one=record.text("pick_one") or None,
        needs=record.names("needs"),
        excludes=record.names("excludes"),
        spends=record.pairs("spends"),
        people=record.read("people", 1, as_hands, WANTED_HANDS),
        steps=steps_of(record, steps.get(remedy, [])),
        cares=record.names("cares"),
        phase=phase,
        client=record.text("client"),
    )
