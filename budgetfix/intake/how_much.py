"""Whether a job is larger than what has been tried: how many there are of everything, each against its limit.

Looked at before anything is worked out, so that what is too large is refused at once.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from budgetfix.base import limits
from budgetfix.base.money import write_money
from budgetfix.base.numbers import ceil_div
from budgetfix.base.problems import FileProblem, Place
from budgetfix.brief.models import Brief
from budgetfix.catalog.models import Catalog, Remedy
from budgetfix.intake.catalog_raw import RawCatalog
from budgetfix.intake.raw_rows import RawRow, RawSurvey

SPLIT = "plan it as two jobs"
FEWER = "leave out what would not come into question"
THINGS = ("openings", "curtains", "furniture", "pictures", "rugs", "lights", "sockets")
IN_CATALOG = {
    "products": limits.MOST_PRODUCTS,
    "remedies": limits.MOST_REMEDIES,
    "tools": limits.MOST_TOOLS,
    "shops": limits.MOST_SHOPS,
}


def survey_too_large(raw: RawSurvey) -> list[FileProblem]:
    """Too many rooms, walls of a room, things in a room, or listed faults: at the first one that is too many."""
    found = list(_too_many(raw.rows.get("rooms", []), "rooms", limits.MOST_ROOMS, SPLIT))
    found += _too_many(raw.rows.get("faults", []), "faults", limits.MOST_FAULTS, SPLIT)
    for room, rows in _by_room(raw.rows.get("walls", [])).items():
        todo = "measure a curve as fewer, longer walls"
        found += _too_many(rows, f"walls of {room or 'the room'}", limits.MOST_WALLS, todo)
    things = [row for table in THINGS for row in raw.rows.get(table, [])]
    for room, rows in _by_room(things).items():
        todo = "leave out small things that stand in nobody's way"
        found += _too_many(rows, f"things in {room or 'the room'}", limits.MOST_THINGS_IN_ROOM, todo)
    return found


def catalog_too_large(raw: RawCatalog) -> list[FileProblem]:
    """Too many products, remedies, tools or shops: at the first one that is too many."""
    return [
        problem
        for table, most in IN_CATALOG.items()
        for problem in _too_many(raw.rows.get(table, []), table, most, FEWER)
    ]


def faults_too_many(rows: list[RawRow]) -> list[FileProblem]:
    """Too many listed faults."""
    return list(_too_many(rows, "faults", limits.MOST_FAULTS, SPLIT))


def _too_many(rows: list[RawRow], what: str, most: int, todo: str) -> Iterator[FileProblem]:
    if len(rows) > most:
        yield FileProblem(rows[most].place, f"{len(rows):,} {what}", f"{most:,} at most", todo)


def _by_room(rows: Iterable[RawRow]) -> dict[str, list[RawRow]]:
    found: dict[str, list[RawRow]] = {}
    for row in rows:
        cell = row.cells.get("room")
        found.setdefault("" if cell is None else str(cell.value), []).append(row)
    return found


def job_too_dear(file: str, catalog: Catalog, brief: Brief) -> list[FileProblem]:
    """A problem where all that could be spent together has more digits than are kept."""
    everything = all_together(catalog, brief)
    if everything <= limits.MOST_ALL_MINOR:
        return []
    found = f"{write_money(everything, brief.currency)} for everything together"
    wanted = f"{write_money(limits.MOST_ALL_MINOR, brief.currency)} at most"
    return [FileProblem(Place(file), found, wanted, "look for a price, a pack or an amount that is too large")]


def all_together(catalog: Catalog, brief: Brief) -> int:
    """What all remedies with their goods, tools, orders and pay would cost at most, in minor units."""
    used: dict[str, Fraction] = {}
    for one in catalog.remedies:
        for product, amount in one.uses:
            used[product] = used.get(product, Fraction(0)) + amount
    total = sum(_cost(one) + brief.labour_minor(_minutes(one)) for one in catalog.remedies) + brief.fixed_minor
    shares = {shop.shop: 1 + shop.tax + shop.markup for shop in catalog.shops}
    for goods in catalog.products:
        packs = used.get(goods.product, Fraction(0)) / goods.pack
        price = max(goods.price_minor, goods.price_high_minor or 0)
        share = shares.get(goods.shop or "", Fraction(1))
        line = max(Fraction(1), packs + 1) * price * share
        total += ceil_div(line.numerator, line.denominator)
    sessions = max(1, len(brief.hours or ()))
    total += sum(max(tool.buy_minor or 0, (tool.hire_minor or 0) * sessions) for tool in catalog.tools)
    return total + sum(shop.delivery_minor for shop in catalog.shops)


def _cost(one: Remedy) -> int:
    return max(one.cost_minor, one.cost_high_minor or 0)


def _minutes(one: Remedy) -> int:
    return sum(max(step.minutes, step.high or 0) * (step.people or one.people) + step.help for step in one.steps)
