"""The sheet `Buy`: what to buy where, what it costs, what was paid, and what is left."""

from __future__ import annotations

from dataclasses import dataclass

from xlsxwriter.utility import xl_col_to_name
from xlsxwriter.workbook import Workbook

from budgetfix.exports import palette
from budgetfix.exports.lettering import count, day
from budgetfix.exports.money_days import buy_from
from budgetfix.exports.plan_book_page import FIRST, TICK, Col, Formula, Page, Styles, Table, Value, kept
from budgetfix.outcome.book import MoneyLine, PlanBook
from budgetfix.outcome.money_lines import NOT_BOUGHT, ON_TOP, line_ids

COLUMNS = (
    Col("Bought", 8, "mark", yours=True),
    Col("Buy from", 10),
    Col("Bag", 6, "mark"),
    Col("Product", 23, "strong"),
    Col("Label size", 14),
    Col("Accepted range", 14, "quiet"),
    Col("Second choice", 20, "quiet"),
    Col("Take along", 22),
    Col("Shop", 12),
    Col("Return by", 10),
    Col("For", 22, "quiet"),
    Col("Packs", 7, "whole"),
    Col("Price each", 9, "money"),
    Col("Line", 10, "money"),
    Col("Most to pay", 10, "money"),
    Col("Paid in all", 11, "money", yours=True),
    Col("Counts as", 10, "money"),
)
ALWAYS = ("Bought", "Product", "Shop", "For", "Packs", "Price each", "Line", "Paid in all", "Counts as")
MONEY, TOTALS = ("Line", "Counts as"), ("planned_total", "real_total")
"""The two columns that are summed, and the names of their sums."""
ON_TOP_NOTE = "type 0 if what you paid above holds it"
ANY_PRICE, NO_RETURN = "any price", "no returns"
NONE_DEAR = "✓ Nothing paid above the most to pay."
SOME_DEAR = " paid above the most to pay: another plan may be better now, so plan again."
MOST_NOTE = "Most to pay: up to there, with all other lines as planned, no other plan is better."


@dataclass(frozen=True, slots=True)
class BuyAt:
    """Where other sheets find things: addresses, and how many lines can be ticked."""

    ticks: str
    ticked_of: int


def buy_sheet(book: Workbook, styles: Styles, plan: PlanBook) -> BuyAt:
    """Lay out the sheet; defines the names planned_total, real_total and money_left."""
    note = f"The pale green cells are yours: tick what is bought, type what you paid in all. Money in {plan.currency}."
    lines = _sorted(plan.money)
    note += f" {MOST_NOTE}" if any(line.most_minor is not None or line.any_price for line in lines) else ""
    page = Page(book, styles, "Buy", "What to buy", note, plan.title)
    whole = [_values(line, styles) for line in lines]
    places = kept(COLUMNS, whole, ALWAYS)
    table = Table(page, [COLUMNS[place] for place in places])
    for id, line, values in zip(line_ids(lines), lines, whole, strict=True):
        _row(table, id, line, [values[place] for place in places])
    if not lines:
        table.says("Nothing to buy: everything in this plan is free.")
    goods = sum(1 for line in lines if line.kind not in NOT_BOUGHT)
    if lines:
        _too_dear(table)
        _yours(table, goods)
    _sums(table, book, plan, lines)
    ticks = table.area("Bought", FIRST, FIRST + goods - 1, away=True) if goods else ""
    return BuyAt(ticks, goods)


def _sorted(money: tuple[MoneyLine, ...]) -> list[MoneyLine]:
    """Goods first, shop by shop as the book has them; delivery and tax at the end."""
    return sorted(money, key=lambda line: (line.kind in ON_TOP, line.kind in NOT_BOUGHT))


def _values(line: MoneyLine, styles: Styles) -> list[Value]:
    what = "; ".join(line.tasks) if line.kind not in ON_TOP else ON_TOP_NOTE
    until = NO_RETURN if line.no_return else day(line.return_by) if line.return_by is not None else ""
    most = ANY_PRICE if line.any_price else None if line.most_minor is None else styles.amount(line.most_minor)
    warned = f"▲ {line.mind}" if line.mind else ""
    name = f"{line.name} (example price)" if line.example else line.name
    days = f"comes {count(line.lead_days, 'day')} after the order" if line.lead_days else ""
    hired = f"for {count(line.days, 'day')}" if line.days else ""
    stands = f"stands at {line.place}" if line.place else ""
    price = None if line.unit_price_minor is None else styles.amount(line.unit_price_minor)
    return [
        None,
        buy_from(line),
        line.bag,
        name,
        line.label,
        line.accepts,
        line.second_choice,
        line.take_along,
        line.shop_name,
        until,
        "; ".join(part for part in (what, hired, stands, days, warned) if part),
        line.packs,
        price,
        styles.amount(line.line_minor),
        most,
        None,
        styles.amount(line.line_minor),
    ]


def _row(table: Table, id: str, line: MoneyLine, values: list[Value]) -> None:
    row, at = table.next_row + 1, {heading: xl_col_to_name(place) for heading, place in table.at.items()}
    amount = values[table.at["Line"] - 1]
    assert isinstance(amount, float)
    if (line.packs or 0) * (line.unit_price_minor or 0) == line.line_minor != 0:
        product = f"{at['Packs']}{row}*{at['Price each']}{row}"
        values[table.at["Line"] - 1] = Formula(f"=ROUND({product},{table.page.styles.digits})", amount)
    paid, plain = f"{at['Paid in all']}{row}", f"{at['Line']}{row}"
    values[table.at["Counts as"] - 1] = Formula(f"=IF(ISNUMBER({paid}),{paid},{plain})", amount)
    plain_look: dict[str, object] = {"bg_color": palette.WHITE, "bold": False}
    no_tick = (lambda heading: plain_look if heading == "Bought" else {}) if line.kind in NOT_BOUGHT else None
    table.row(id, values, look=no_tick)


def _yours(table: Table, goods: int) -> None:
    """What the user's cells take, and how a row looks once it is ticked or dearer than planned."""
    page, styles = table.page, table.page.styles
    if goods:
        page.sheet.data_validation(
            table.area("Bought", FIRST, FIRST + goods - 1),
            {"validate": "list", "source": [TICK], "ignore_blank": True, "show_error": False},
        )
    paid = table.area("Paid in all")
    page.sheet.data_validation(
        paid,
        {
            "validate": "decimal",
            "criteria": ">=",
            "value": 0,
            "error_title": "What did you pay?",
            "error_message": "Type the sum on the receipt, as a number.",
        },
    )
    wanted = ("Bought", "Line", "Paid in all")
    bought, cost, typed = (f"${xl_col_to_name(table.at[heading])}{FIRST + 1}" for heading in wanted)
    over = styles.bare(
        bold=True, font_color=palette.WARN, bg_color=palette.WARN_GROUND, num_format=f'"▲ "{styles.money}'
    )
    page.sheet.conditional_format(
        paid, {"type": "formula", "criteria": f"=AND(ISNUMBER({typed}),{typed}>{cost})", "format": over}
    )
    struck = styles.bare(font_strikeout=True, font_color=palette.QUIET)
    through = page.span(table.at["Product"], FIRST, table.last).split(":")[0]
    line = page.span(table.at["Line"], FIRST, table.last).split(":")[1]
    page.sheet.conditional_format(
        f"{through}:{line}", {"type": "formula", "criteria": f'={bought}<>""', "format": struck}
    )


def _too_dear(table: Table) -> None:
    """What was paid beyond the most to pay: two signs, and a sentence below that counts such lines."""
    if "Most to pay" not in table.at:
        return
    page, styles = table.page, table.page.styles
    most, typed = (f"${xl_col_to_name(table.at[heading])}{FIRST + 1}" for heading in ("Most to pay", "Paid in all"))
    beyond = styles.bare(bold=True, font_color=palette.WHITE, bg_color=palette.WARN, num_format=f'"▲▲ "{styles.money}')
    page.sheet.conditional_format(
        table.area("Paid in all"),
        {
            "type": "formula",
            "criteria": f"=AND(ISNUMBER({typed}),ISNUMBER({most}),{typed}>{most})",
            "format": beyond,
            "stop_if_true": True,
        },
    )
    paid, ceiling = table.area("Paid in all"), table.area("Most to pay")
    dear = f"SUMPRODUCT(ISNUMBER({paid})*ISNUMBER({ceiling})*({paid}>{ceiling}))"
    words = f'=IF({dear}=0,"{NONE_DEAR}","▲▲ "&{dear}&"{SOME_DEAR}")'
    row, place = table.next_row, table.at["Product"]
    page.put(row, place, Formula(words, NONE_DEAR), styles(font_color=palette.QUIET))
    loud = styles.bare(bold=True, font_color=palette.WARN)
    page.sheet.conditional_format(row, place, row, place, {"type": "formula", "criteria": f"={dear}>0", "format": loud})


def _sums(table: Table, book: Workbook, plan: PlanBook, lines: list[MoneyLine]) -> None:
    """Sums by shop, the total, and what is left of the budget."""
    table.next_row += 1 if lines else 0
    last, amount = table.next_row - 2, table.page.styles.amount
    shops = list(dict.fromkeys(line.shop_name for line in lines))
    for shop in sorted(shops, key=lambda name: (not name, shops.index(name))) if len(shops) > 1 else []:
        spent = amount(sum(line.line_minor for line in lines if line.shop_name == shop))
        _sum_row(table, shop or "No shop", [_by_shop(table, heading, shop, last, spent) for heading in MONEY])
    whole = [f"=SUM({table.area(heading, FIRST, last)})" if lines else "=0" for heading in MONEY]
    row = _sum_row(table, "Total", [Formula(text, amount(plan.spent_minor)) for text in whole], strong=True)
    for name, heading in zip(TOTALS, MONEY, strict=True):
        book.define_name(name, "=" + table.page.ref(row, table.at[heading], away=True))
    if plan.budget_minor is None:
        return
    _sum_row(table, "Budget", [Formula("=budget", amount(plan.budget_minor))] * 2)
    if plan.held_back_minor:
        _sum_row(table, "Held back", [Formula("=held_back", amount(plan.held_back_minor))] * 2)
    left = amount(plan.budget_minor - plan.held_back_minor - plan.spent_minor)
    row = _sum_row(table, "Left", [Formula(f"=budget-held_back-{name}", left) for name in TOTALS], strong=True)
    for heading in MONEY:
        table.page.sheet.conditional_format(
            row, table.at[heading], row, table.at[heading], table.page.styles.below_zero()
        )
    book.define_name("money_left", "=" + table.page.ref(row, table.at["Counts as"], away=True))


def _by_shop(table: Table, heading: str, shop: str, last: int, value: float) -> Formula:
    """By exact text: SUMIF would take a shop named `>5` or `a*` for a condition."""
    name = table.page.ref(table.next_row, table.at["For"]) if shop else '""'
    shops, sums = table.area("Shop", FIRST, last), table.area(heading, FIRST, last)
    return Formula(f"=SUMPRODUCT(--EXACT({shops},{name}),{sums})", value)


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
