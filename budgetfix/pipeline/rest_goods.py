"""The catalogue after what was bought: goods on hand, tools owned, hire that is paid for, what cannot be had."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import timedelta
from fractions import Fraction

from budgetfix.brief.models import Brief
from budgetfix.catalog.models import Catalog, Product, Tool
from budgetfix.framing.options import sessions as framed_sessions
from budgetfix.optimize.setting_up import wholes
from budgetfix.outcome.so_far import LineBack, SoFar
from budgetfix.pipeline.rest_done import Done
from budgetfix.pipeline.rest_hours import session_from, whole_of
from budgetfix.pipeline.rest_money import Paid

OUT_WORDS = {"returned": "it went back to the shop", "sold out": "it is sold out"}


@dataclass(frozen=True)
class Hire:
    """Sessions of hire that are paid for, as `framing.rest.Rest` has them."""

    prepaid: tuple[tuple[str, int], ...] = ()
    held: tuple[tuple[str, tuple[int, ...]], ...] = ()


@dataclass(frozen=True)
class Goods:
    """The catalogue with what is on hand, and what framing must know besides (see `framing.rest.Rest`)."""

    catalog: Catalog
    hire: Hire
    in_hand: tuple[tuple[str, str, int], ...]
    arriving: tuple[tuple[str, int], ...]
    sold_out: tuple[tuple[str, str], ...]
    barred: tuple[tuple[str, str], ...]
    """(remedy, state) of remedies whose own cost was given back, or could not be spent."""
    paid_for: tuple[str, ...]
    """Remedies whose own cost is paid."""


def goods_of(so_far: SoFar, paid: Paid, done: Done, brief: Brief, catalog: Catalog, live: int = 0) -> Goods:
    """Everything about goods, from the lines as they count. `live`: the first session (from 0) that is not gone."""
    bought = [one for one in paid.by_kind("product") if one.state == "bought"]
    owned = {one.planned.line.of for one in paid.by_kind("tool") if one.state == "bought"}
    not_bought = {one.planned.line.of for one in paid.by_kind("tool") if one.state in OUT_WORDS}
    not_hired = {one.planned.line.of for one in paid.by_kind("hire") if one.state in OUT_WORDS}
    own = paid.by_kind("remedy")
    products = _on_hand(catalog, bought, done)
    tools = tuple(_tool(one, owned, not_bought, not_hired) for one in catalog.tools)
    return Goods(
        Catalog(**{**dict(catalog), "products": products, "tools": tools}),
        _hire(paid, so_far, done, brief, live),
        tuple(sorted({pair for one in bought for pair in _in_hand(one, brief)})),
        _arriving(bought, brief),
        sold_out(so_far),
        tuple((one.planned.line.of, str(one.state)) for one in own if one.state in OUT_WORDS),
        tuple(one.planned.line.of for one in own if one.state == "bought"),
    )


def sold_out(so_far: SoFar) -> tuple[tuple[str, str], ...]:
    """(product, why) of what the shop has not got, or what went back."""
    found = {one.planned.line.product: OUT_WORDS[one.state] for one in so_far.lines if one.state in OUT_WORDS}
    return tuple(sorted((product, words) for product, words in found.items() if product is not None))


def without(catalog: Catalog, products: Iterable[str]) -> Catalog:
    """The catalogue in which no kind finds these products; a remedy that names one still may."""
    gone = frozenset(products)
    if not gone:
        return catalog
    kept = tuple(Product(**{**dict(one), "what": ""}) if one.product in gone else one for one in catalog.products)
    return Catalog(**{**dict(catalog), "products": kept})


def _on_hand(catalog: Catalog, bought: list[LineBack], done: Done) -> tuple[Product, ...]:
    """Every product with what was bought of it and is not used up; what the catalogue has no longer, as it was."""
    units: dict[str, Fraction] = {}
    packs: dict[str, int] = {}
    for one in bought:
        line = one.planned.line
        units[line.product or ""] = units.get(line.product or "", Fraction(0)) + one.planned.units
        packs[line.product or ""] = packs.get(line.product or "", 0) + (line.packs or 0)
    used: dict[str, Fraction] = {}
    for planned in done.done:
        for product, amount in planned.candidate.goods:
            used[product] = used.get(product, Fraction(0)) + amount
    known = {one.product for one in catalog.products}
    gone = {one.planned.line.product: one for one in bought if one.planned.line.product not in known}
    products = (*catalog.products, *(_unlisted(gone[id]) for id in sorted(gone, key=str)))
    return tuple(_with(one, units, used, packs) for one in products)


def _unlisted(one: LineBack) -> Product:
    """A product that was bought and that the catalogue does not hold any more."""
    line = one.planned.line
    pack = one.planned.units / line.packs if line.packs and one.planned.units else Fraction(1)
    return Product(
        product=line.product or "", name=line.name, price_minor=line.unit_price_minor or 0, pack=pack, label=line.label
    )


def _with(one: Product, units: dict[str, Fraction], used: dict[str, Fraction], packs: dict[str, int]) -> Product:
    if one.product not in units and one.product not in used:
        return one
    there = one.on_hand + units.get(one.product, Fraction(0)) - used.get(one.product, Fraction(0))
    stock = None if one.stock is None else max(0, one.stock - packs.get(one.product, 0))
    return Product(**{**dict(one), "on_hand": max(Fraction(0), there), "stock": stock})


def _tool(one: Tool, owned: set[str], not_bought: set[str], not_hired: set[str]) -> Tool:
    if one.tool in owned:
        return Tool(**{**dict(one), "own": True})
    buy = None if one.tool in not_bought else one.buy_minor
    hire = None if one.tool in not_hired else one.hire_minor
    return Tool(**{**dict(one), "buy_minor": buy, "hire_minor": hire})


def _hire(paid: Paid, so_far: SoFar, done: Done, brief: Brief, live: int) -> Hire:
    """Sessions of hire that are paid for, less those that are gone and in which a step with the tool was done.

    Where such a session is not gone, its hire goes on: more steps in it cost nothing, steps in any other one do.
    """
    sessions: dict[str, int] = {}
    for one in paid.by_kind("hire"):
        if one.state == "bought":
            sessions[one.planned.line.of] = sessions.get(one.planned.line.of, 0) + (one.planned.line.packs or 0)
    numbers = wholes(framed_sessions(brief) or ())
    still = frozenset(number for at, number in enumerate(numbers) if at >= live)
    users = {planned.candidate.id: planned.candidate.tools for planned in (*done.done, *done.begun)}
    prepaid, held = [], []
    for tool, count in sorted(sessions.items()):
        mine = (one.planned for one in so_far.done if tool in users.get(one.planned.task.candidate, ()))
        used = {whole_of(one, brief) for one in mine}
        now = sorted(number for on, number in used if on is None and number is not None and number in still)[:count]
        left = max(0, count - (len(used) - len(now)))
        held += [(tool, tuple(now[:left]))] if now[:left] else []
        prepaid += [(tool, left)] if left else []
    return Hire(tuple(prepaid), tuple(held))


def _ready(one: LineBack, brief: Brief) -> int:
    """First session in which bought goods are there: their days of waiting count from the day of their order."""
    days, ordered = one.planned.line.lead_days, one.planned.ordered
    if days <= 0 or brief.hours is None:
        return 0
    on = None if ordered is None else ordered + timedelta(days=days)
    return session_from(on, one.planned.ordered_day + days, brief)


def _in_hand(one: LineBack, brief: Brief) -> list[tuple[str, str, int]]:
    ready = _ready(one, brief)
    return [(user, one.planned.line.product or "", ready) for user in one.planned.users]


def _arriving(bought: list[LineBack], brief: Brief) -> tuple[tuple[str, int], ...]:
    found: dict[str, int] = {}
    for one in bought:
        product = one.planned.line.product or ""
        found[product] = max(found.get(product, 0), _ready(one, brief))
    return tuple((product, at) for product, at in sorted(found.items()) if at)
