"""From raw rows to a catalog: every field read, every name linked, every problem with its place."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from fractions import Fraction
from typing import Any, TypeVar

from budgetfix.base.money import digits_of, read_number
from budgetfix.base.numbers import half_up
from budgetfix.base.problems import FileProblem
from budgetfix.base.tape import WANTED_LENGTH, read_length
from budgetfix.catalog.models import WHATS, Catalog, Product, Remedy, Shop, Tool, WorkStep
from budgetfix.forms.catalog_form import CATALOG_FORM, CATALOG_TOP
from budgetfix.intake.catalog_changes import read_changes, read_set
from budgetfix.intake.catalog_links import link
from budgetfix.intake.catalog_raw import RawCatalog
from budgetfix.intake.catalog_things import link_things
from budgetfix.intake.raw_rows import RawCell, RawRow, close_to
from budgetfix.intake.reader import Record, as_text, unknown_fields
from budgetfix.room.survey import Survey

T = TypeVar("T")
EXTRA = {"remedies": ("steps", "minutes"), "steps": ("hours", "minutes")}
SIZES = ("width", "width_to", "depth", "height", "drop", "lead")
FIGURES = ("lumens", "kelvin", "carries")
THREE = ("low", "likely", "high")


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
    top = Record(raw.top, problems)
    unknown_fields(top, [column.field for column in CATALOG_TOP], raw.top.cells)
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
    steps = _steps_by_remedy(raw, problems)
    catalog = Catalog(
        currency=own_currency,
        tools=_all(raw, "tools", problems, lambda record: _tool(record, money)),
        shops=_all(raw, "shops", problems, lambda record: _shop(record, money)),
        products=_all(raw, "products", problems, lambda record: _product(record, money, bare)),
        remedies=_all(raw, "remedies", problems, lambda record: _remedy(record, money, bare, steps)),
    )
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
        if record.sound:
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
    )


def as_share(value: object) -> Fraction:
    """`8.25%` or 0.0825, exactly. Errors: ValueError."""
    text = as_text(value)
    percent = text.endswith("%")
    share = Fraction(read_number(text[:-1].strip() if percent else value)) / (100 if percent else 1)
    if not 0 <= share <= 1:
        raise ValueError("a share is from 0% to 100%")
    return share


def _product(record: Record, currency: str, unit: str) -> Product:
    product = record.id("product")
    if not record.has("price"):
        record.problem("price", "a price such as 12.50")
    pack = record.number("pack", Fraction(1))
    if pack <= 0:
        record.problem("pack", "a number above 0")
    given: dict[str, Any] = {name: _length(record, name, unit) for name in SIZES}
    given |= {name: float(record.number(name, Fraction(0))) if record.has(name) else None for name in FIGURES}
    given |= {name: record.text(name) for name in ("name", "unit", "label", "what", "heading", "cloth")}
    if given["what"] and given["what"] not in WHATS:
        record.problem("what", f"one of: {', '.join(WHATS)}", close_to(given["what"], list(WHATS)))
    return Product(
        product=product,
        shop=record.text("shop") or None,
        price_minor=record.money("price", currency) or 0,
        pack=pack if pack > 0 else Fraction(1),
        on_hand=record.number("on_hand", Fraction(0)),
        lead_days=record.whole("lead_days", 0),
        example=record.yes("example"),
        round=record.yes("round"),
        **given,
    )


def _length(record: Record, field: str, unit: str) -> float | None:
    return record.read(field, None, lambda value: read_length(value, unit), WANTED_LENGTH)


def _remedy(record: Record, currency: str, unit: str, steps: dict[str, list[Record]]) -> Remedy:
    remedy = record.id("remedy")
    if not record.has("answers") and not record.has("kind"):
        record.problem("answers", "answers to a listed fault, or a kind")
    people = record.whole("people", 1)
    if people < 1:
        record.problem("people", "1 or more")
    if record.has("set") and not record.has("on"):
        record.problem("set", "`on` beside it: the name of the thing that is set")
    phase = record.whole("phase", 0) if record.has("phase") else None
    return Remedy(
        remedy=remedy,
        name=record.text("name") or remedy,
        answers=record.pairs("answers", negative=True),
        kind=record.text("kind") or None,
        on=record.text("on") or None,
        set=read_set(record, "set", unit),
        changes=read_changes(record, "changes", unit),
        cost_minor=record.money("cost", currency) or 0,
        uses=record.pairs("uses"),
        tools=record.names("tools"),
        pick_one=record.text("pick_one") or None,
        needs=record.names("needs"),
        excludes=record.names("excludes"),
        spends=record.pairs("spends"),
        people=max(1, people),
        steps=_steps(record, steps.get(remedy, [])),
        cares=record.names("cares"),
        phase=phase,
    )


def _steps_by_remedy(raw: RawCatalog, problems: list[FileProblem]) -> dict[str, list[Record]]:
    """The rows of the sheet Steps, by remedy, their three figures gathered as minutes."""
    found: dict[str, list[Record]] = {}
    known = {as_text(row.cells["remedy"].value) for row in raw.rows.get("remedies", []) if "remedy" in row.cells}
    for row in raw.rows.get("steps", []):
        record = Record(row, problems)
        remedy = record.id("remedy")
        if remedy and remedy not in known:
            record.problem("remedy", "a remedy from the sheet Remedies")
        given = {name: row.cells[name].value for name in THREE if name in row.cells}
        if given:
            value = given["likely"] if list(given) == ["likely"] else given
            row.cells["minutes"] = RawCell(value, row.place_of("likely"))
        found.setdefault(remedy, []).append(record)
    return found


def _steps(record: Record, sheet: list[Record]) -> tuple[WorkStep, ...]:
    if record.has("steps"):
        listed = record.row.cells["steps"].value
        if record.has("hours") or record.has("minutes"):
            record.problem("steps", "either steps or hours, not both")
        if not isinstance(listed, list):
            record.problem("steps", "a list such as [{hours: 0.5}, {hours: 1, wait_sessions: 1}]")
            return ()
        return tuple(_step(_nested(record, index, item)) for index, item in enumerate(listed))
    if sheet:
        return tuple(_step(row) for row in sheet)
    if record.has("hours") or record.has("minutes"):
        step = _step(record, own_people=False)
        return (step,) if step.minutes > 0 else ()
    return ()


def _nested(record: Record, index: int, item: object) -> Record:
    """One step of a remedy's own list, as a record."""
    cell = record.row.cells["steps"]
    place = cell.at(index) if cell.at is not None else cell.place
    row = RawRow("steps", place)
    for key, value in (item.items() if isinstance(item, dict) else [("hours", item)]):
        inner = partial(cell.at, index, str(key)) if cell.at is not None else None
        row.cells[str(key)] = RawCell(value, inner() if inner is not None else place, at=inner)
    nested = Record(row, record.problems)
    unknown_fields(nested, ["hours", "minutes", "wait_sessions", "wait_hours", "people", "text"], row.cells)
    return nested


def _step(record: Record, *, own_people: bool = True) -> WorkStep:
    field, per = ("minutes", 1) if record.has("minutes") else ("hours", 60)
    wanted = f"{field} such as 0.5, or {{low: 0.5, likely: 0.75, high: 1.5}}"
    if not record.has(field):
        record.problem(field, wanted)
    low, likely, high = record.read(field, (Fraction(0),) * 3, as_three, wanted)
    wait = record.number("wait_hours", Fraction(0)) * 60
    people = record.whole("people", 1) if own_people and record.has("people") else None
    three = None if low == likely == high else (low, likely, high)
    return WorkStep(
        minutes=math.ceil((low + likely + high) / 3 * per),
        low=half_up(three[0] * per) if three else None,
        likely=half_up(three[1] * per) if three else None,
        high=half_up(three[2] * per) if three else None,
        wait_sessions=record.whole("wait_sessions", 0) if record.row.table != "remedies" else 0,
        wait_minutes=math.ceil(wait),
        people=people,
        text=record.text("text") if record.row.table != "remedies" else "",
    )


def as_three(value: object) -> tuple[Fraction, Fraction, Fraction]:
    """(low, likely, high), all the same for one number. Errors: ValueError."""
    if isinstance(value, dict):
        if set(value) != set(THREE):
            raise ValueError("write all three: low, likely, high")
        low, likely, high = (Fraction(read_number(value[name])) for name in THREE)
        if not 0 <= low <= likely <= high:
            raise ValueError("low, likely and high go upwards")
        return low, likely, high
    number = Fraction(read_number(value))
    if number < 0:
        raise ValueError("time cannot be below 0")
    return number, number, number


__all__ = ["as_share", "as_three", "build_catalog"]
