"""The plan's bill from inside: what each line costs, what the client pays for it, and what is left between.

What leaves the till: goods of a shop at the shelf price, with their delivery and tax; hire; pay; the van. A piece from
one's own stock takes nothing out of it, so its whole fee is margin.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from budgetfix.brief.van import VAN_COSTS
from budgetfix.catalog.models import Catalog, Product
from budgetfix.framing.frame import Framed, Ground
from budgetfix.framing.purses import errands_by_id
from budgetfix.outcome.book import MoneyLine, PlanBook
from budgetfix.outcome.quote import Costing, CostRow, Quote, VanLoad
from budgetfix.outcome.quoting import options

SORTS = {"tool": "tool", "hire": "tool", "remedy": "work", "labour": "work"}


def costing(base: Ground, framed: Framed, book: PlanBook, quote: Quote) -> Costing:
    """The costing of a plan, with the margin of each option of its quote."""
    minutes = {id: sum(work.person_minutes for work in one.work) for id, one in framed.candidates.items()} | {
        id: one.minutes * one.people for id, one in errands_by_id(base.brief).items()
    }
    rows = cost_rows(base, book.money, minutes)
    others = tuple(
        (option.letter, option.name, option.total_minor, margin_minor(cost_rows(base, stop.money, minutes)))
        for option, (_, stop) in zip(quote.options, options(book), strict=True)
    )
    return Costing(rows, _loads(base, rows), base.brief.labour_minor_hour, others)


def margin_minor(rows: Iterable[CostRow]) -> int:
    """What is left of a whole bill."""
    return sum(row.margin_minor for row in rows)


def cost_rows(base: Ground, money: Iterable[MoneyLine], minutes: dict[str, int]) -> tuple[CostRow, ...]:
    """Every line of a bill, in the bill's order. `minutes`: person-minutes of remedies and errands, by id."""
    products = {one.product: one for one in base.catalog.products}
    work = {one.name: one.minutes * one.people for one in base.brief.fixed if one.minutes}
    rows = []
    for place, line in enumerate(money):
        if line.product is not None:
            rows.append(_goods(base.catalog, line, products[line.product]))
        else:
            rows.append(_other(line, place, minutes, work))
    return tuple(rows)


def _goods(catalog: Catalog, line: MoneyLine, product: Product) -> CostRow:
    shelf = (line.packs or 0) * (line.unit_price_minor or 0)
    markup = next((shop.markup for shop in catalog.shops if shop.shop == line.shop), Fraction(0))
    own = product.stock is not None
    weight = None if product.weight_kg is None else float(product.weight_kg * (line.packs or 0))
    return CostRow(
        id=line.product or "",
        sort="stock" if own else "hire" if line.days else "bought",
        name=", ".join(part for part in (line.name, line.label) if part),
        use="; ".join(line.tasks),
        source=line.shop_name,
        packs=line.packs,
        shelf_minor=shelf,
        markup=f"{float(markup * 100):g} %" if markup else "",
        client_minor=line.line_minor,
        out_minor=0 if own else shelf,
        days=line.days,
        place=product.place,
        weight_kg=weight,
    )


def _other(line: MoneyLine, place: int, minutes: dict[str, int], work: dict[str, int]) -> CostRow:
    sort = "van" if line.name in VAN_COSTS.values() and line.kind == "fixed" else SORTS.get(line.kind, line.kind)
    name = line.tasks[0] if line.kind in ("labour", "remedy") and line.tasks else line.name
    paid = minutes.get(line.of) if line.kind == "labour" else work.get(line.name) if line.kind == "fixed" else None
    return CostRow(
        id=f"{line.kind}:{place}",
        sort=sort,
        name=name,
        use="; ".join(line.tasks) if line.kind in ("tool", "hire") else "",
        source=line.shop_name,
        packs=line.packs,
        shelf_minor=None,
        markup="",
        client_minor=line.line_minor,
        out_minor=line.line_minor,
        minutes=paid,
    )


def _loads(base: Ground, rows: tuple[CostRow, ...]) -> tuple[VanLoad, ...]:
    vans = base.brief.vans
    carried = sum(row.weight_kg or 0.0 for row in rows if row.sort == "stock")
    return tuple(
        VanLoad(
            name,
            slot.on,
            slot.start_minute,
            slot.end_minute,
            carried,
            None if slot.load_kg is None else float(slot.load_kg),
        )
        for name, slot in (vans.slots if vans is not None else ())
    )


__all__ = ["cost_rows", "costing", "margin_minor"]
