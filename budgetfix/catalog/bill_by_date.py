"""The bill where money comes by date: what is bought when, what is left of a pack used up first."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction

from budgetfix.catalog.bill import BillLine, delivery_lines, goods_lines, packs_for, tool_lines
from budgetfix.catalog.models import Catalog


@dataclass(frozen=True, slots=True)
class Bought:
    """What is paid in one phase of money; `uses` of what is bought in it, in units, whatever is left of earlier packs.

    `costs`, `labour`: (remedy id, minor units); `hired`: (tool, sessions); `fixed`: (name, minor units).
    """

    costs: tuple[tuple[str, int], ...] = ()
    uses: Mapping[str, Fraction] = field(default_factory=dict)
    tools: tuple[str, ...] = ()
    hired: tuple[tuple[str, int], ...] = ()
    labour: tuple[tuple[str, int], ...] = ()
    fixed: tuple[tuple[str, int], ...] = ()


def bill_by_date(catalog: Catalog, phases: Sequence[Bought]) -> tuple[BillLine, ...]:
    """Every line of money, phase by phase; in each the order of the plain bill, and one order a shop."""
    found: list[BillLine] = []
    used: dict[str, Fraction] = {}
    before: dict[str, int] = {}
    for number, one in enumerate(phases):
        for product, units in one.uses.items():
            used[product] = used.get(product, Fraction(0)) + units
        now = packs_for(catalog, used)
        goods = goods_lines(catalog, {id: count - before.get(id, 0) for id, count in now.items()})
        lines = [*goods, *delivery_lines(catalog, goods), *tool_lines(catalog, one.tools, one.hired), *_work(one)]
        found += [replace(line, phase=number) for line in lines]
        before = now
    return tuple(found)


def _work(one: Bought) -> Iterable[BillLine]:
    yield from (BillLine("remedy", id, None, None, None, cost) for id, cost in sorted(one.costs) if cost)
    yield from (BillLine("labour", id, None, None, None, cost) for id, cost in sorted(one.labour) if cost)
    yield from (BillLine("fixed", name, None, None, None, cost) for name, cost in one.fixed)


def spent_by(lines: Iterable[BillLine], phases: int) -> tuple[int, ...]:
    """What is spent by the end of each phase, earlier ones counted in."""
    sums = [0] * phases
    for line in lines:
        for phase in range(line.phase, phases):
            sums[phase] += line.line_minor
    return tuple(sums)
