"""Below the list of `Buy`: sums by shop, the total, and what is left of the budget."""

from __future__ import annotations

from dataclasses import dataclass

from xlsxwriter.workbook import Workbook

from budgetfix.exports import palette
from budgetfix.exports.carried import carried, whole_budget
from budgetfix.exports.plan_book_page import Formula, Table
from budgetfix.outcome.book import MoneyLine, PlanBook
from budgetfix.outcome.money_lines import NOT_BOUGHT, ON_TOP
from budgetfix.outcome.remembering import counted_minor

MONEY, TOTALS = ("Line", "Counts as"), ("planned_total", "real_total")
"""The two columns that are summed, and the names of their sums."""


@dataclass(frozen=True, slots=True)
class Rows:
    """The rows of one part of the list, counted from 0; `goods` of them, the first ones, can be ticked."""

    first: int
    last: int
    goods: int


def goods_first(money: tuple[MoneyLine, ...]) -> list[MoneyLine]:
    """Goods first, shop by shop as the book has them; delivery and tax at the end."""
    return sorted(money, key=lambda line: (line.kind in ON_TOP, line.kind in NOT_BOUGHT))


def buy_sums(table: Table, book: Workbook, plan: PlanBook, parts: tuple[Rows, Rows]) -> None:
    """Sums by shop, the total, and what is left of the budget; what was paid counts as planned where it is settled."""
    settled, left = parts
    has_rows = settled.last >= settled.first or left.last >= left.first
    table.next_row += 1 if has_rows else 0
    amount, before = table.page.styles.amount, carried(plan)
    counted = [(one.planned.line.shop_name, counted_minor(one)) for one in before.lines]
    counted += [(line.shop_name, line.line_minor) for line in goods_first(plan.money)]
    shops = list(dict.fromkeys(shop for shop, _ in counted))
    for shop in sorted(shops, key=lambda name: (not name, shops.index(name))) if len(shops) > 1 else []:
        spent = amount(sum(minor for name, minor in counted if name == shop))
        _sum_row(table, shop or "No shop", [_by_shop(table, heading, shop, parts, spent) for heading in MONEY])
    whole = ["=" + ("+".join(f"SUM({area})" for area in _areas(table, heading, parts)) or "0") for heading in MONEY]
    spent_minor = plan.spent_minor + before.paid_minor
    row = _sum_row(table, "Total", [Formula(text, amount(spent_minor)) for text in whole], strong=True)
    for name, heading in zip(TOTALS, MONEY, strict=True):
        book.define_name(name, "=" + table.page.ref(row, table.at[heading], away=True))
    budget_minor = whole_budget(plan)
    if budget_minor is None:
        return
    _sum_row(table, "Budget", [Formula("=budget", amount(budget_minor))] * 2)
    if plan.held_back_minor:
        _sum_row(table, "Held back", [Formula("=held_back", amount(plan.held_back_minor))] * 2)
    money_left = amount(budget_minor - plan.held_back_minor - spent_minor)
    row = _sum_row(table, "Left", [Formula(f"=budget-held_back-{name}", money_left) for name in TOTALS], strong=True)
    for heading in MONEY:
        table.page.sheet.conditional_format(
            row, table.at[heading], row, table.at[heading], table.page.styles.below_zero()
        )
    book.define_name("money_left", "=" + table.page.ref(row, table.at["Counts as"], away=True))


def _areas(table: Table, heading: str, parts: tuple[Rows, Rows]) -> list[str]:
    """What is summed: settled lines at what they count as, whatever was planned."""
    return [
        table.area("Counts as" if at == 0 else heading, part.first, part.last)
        for at, part in enumerate(parts)
        if part.last >= part.first
    ]


def _by_shop(table: Table, heading: str, shop: str, parts: tuple[Rows, Rows], value: float) -> Formula:
    """By exact text: SUMIF would take a shop named `>5` or `a*` for a condition."""
    name = table.page.ref(table.next_row, table.at["For"]) if shop else '""'
    shops = [table.area("Shop", part.first, part.last) for part in parts if part.last >= part.first]
    sums = _areas(table, heading, parts)
    text = "+".join(f"SUMPRODUCT(--EXACT({at},{name}),{area})" for at, area in zip(shops, sums, strict=True))
    return Formula(f"={text}", value)


def _sum_row(table: Table, label: str, values: list[Formula], strong: bool = False) -> int:
    page, row = table.page, table.next_row
    edge: dict[str, object] = {"bold": strong, "bottom": 1, "bottom_color": palette.LINE}
    if strong:
        edge |= {"top": 1, "top_color": palette.TEAL, "bg_color": palette.STRAW}
    for place in range(table.at["For"], table.at["Counts as"] + 1):
        page.put(row, place, None, page.styles("", **edge))
    page.put(row, table.at["For"], label, page.styles("text", **edge))
    for heading, value in zip(MONEY, values, strict=True):
        page.put(row, table.at[heading], value, page.styles("money", **edge))
    page.sheet.set_row(row, 18)
    table.next_row += 1
    return row
