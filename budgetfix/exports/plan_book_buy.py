"""The sheet `Buy`: what to buy where, what it costs, what was paid, and what is left."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from xlsxwriter.utility import xl_col_to_name
from xlsxwriter.workbook import Workbook

from budgetfix.exports import palette
from budgetfix.exports.carried import RETURNED, SO_FAR, SOLD_OUT, STILL_TO_BUY, TICK, carried
from budgetfix.exports.lettering import count, day
from budgetfix.exports.money_days import buy_from
from budgetfix.exports.plan_book_buy_sums import Rows, buy_sums, goods_first
from budgetfix.exports.plan_book_page import FIRST, Col, Formula, Page, Styles, Table, Value, kept
from budgetfix.outcome.book import MoneyLine, PlanBook
from budgetfix.outcome.money_lines import NOT_BOUGHT, ON_TOP, line_ids
from budgetfix.outcome.remembering import counted_minor
from budgetfix.outcome.so_far import LineBack

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
ON_TOP_NOTE = "type 0 if what you paid above holds it"
ANY_PRICE, NO_RETURN = "any price", "no returns"
NONE_LEFT = "Nothing more to buy."
NONE_DEAR = "✓ Nothing paid above the most to pay."
SOME_DEAR = " paid above the most to pay: another plan may be better now, so plan again."
MOST_NOTE = "Most to pay: up to there, with all other lines as planned, no other plan is better."


@dataclass(frozen=True, slots=True)
class BuyAt:
    """Where other sheets find the ticks: an area of lines carried on, one of lines still to buy; none for none."""

    ticks: tuple[str, ...]
    ticked_of: int
    ticked: int = 0


def buy_sheet(book: Workbook, styles: Styles, plan: PlanBook) -> BuyAt:
    """Lay out the sheet; defines the names planned_total, real_total and money_left."""
    note = f"The pale green cells are yours: tick what is bought, type what you paid in all. Money in {plan.currency}."
    lines, before = goods_first(plan.money), _first_goods(carried(plan).lines)
    note += f" {MOST_NOTE}" if any(line.most_minor is not None or line.any_price for line in lines) else ""
    page = Page(book, styles, "Buy", "What to buy", note, plan.title)
    ids = [*(one.planned.id for one in before), *line_ids(lines, carried(plan).ids)]
    whole = [*(_settled(one, styles) for one in before), *(_values(line, styles) for line in lines)]
    places = kept(COLUMNS, whole, ALWAYS)
    table = Table(page, [COLUMNS[place] for place in places])
    every = [*(one.planned.line for one in before), *lines]
    rows = [(id, line, [values[place] for place in places]) for id, line, values in zip(ids, every, whole, strict=True)]
    settled = _part(table, rows[: len(before)], SO_FAR if before else "")
    left = _part(table, rows[len(before) :], STILL_TO_BUY if before and lines else "")
    if not lines:
        table.says(NONE_LEFT if before else "Nothing to buy: everything in this plan is free.")
    if rows:
        _too_dear(table)
        _yours(table, [part for part in (settled, left) if part.goods])
    buy_sums(table, book, plan, (settled, left))
    parts = [part for part in (settled, left) if part.goods]
    ticks = tuple(table.area("Bought", part.first, part.first + part.goods - 1, away=True) for part in parts)
    bought = sum(1 for one in before if one.state == "bought" and one.planned.line.kind not in NOT_BOUGHT)
    gone = sum(1 for one in before if one.state in (RETURNED, SOLD_OUT))
    return BuyAt(ticks, settled.goods + left.goods - gone, bought)


def _part(table: Table, rows: list[tuple[str, MoneyLine, list[Value]]], head: str) -> Rows:
    if head:
        table.band("Product", head)
    first = table.next_row
    for id, line, values in rows:
        _row(table, id, line, values)
    return Rows(first, table.last, sum(1 for _, line, _ in rows if line.kind not in NOT_BOUGHT))


def _first_goods(lines: Sequence[LineBack]) -> list[LineBack]:
    """As lines still to buy are sorted."""
    kinds = [(one.planned.line.kind in ON_TOP, one.planned.line.kind in NOT_BOUGHT) for one in lines]
    return [lines[at] for at in sorted(range(len(lines)), key=lambda at: kinds[at])]


def _settled(one: LineBack, styles: Styles) -> list[Value]:
    """A line of which somebody said something, with that in the user's cells; advice for the shop is over."""
    line, home = one.planned.line, one.state not in (RETURNED, SOLD_OUT)
    plain = replace(
        line, bag="", accepts="", second_choice="", take_along="", lead_days=0, most_minor=None, any_price=False,
        mind="", return_by=line.return_by if home else None, no_return=line.no_return and home,
    )  # fmt: skip
    values = _values(plain, styles)
    at = {column.heading: place for place, column in enumerate(COLUMNS)}
    if line.kind in ON_TOP:
        values[at["For"]] = ""
    values[at["Bought"]] = TICK if one.state == "bought" else one.state
    values[at["Paid in all"]] = None if one.paid_minor is None else styles.amount(one.paid_minor)
    values[at["Counts as"]] = styles.amount(counted_minor(one) if one.state or one.paid_minor is not None else 0)
    return values


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
    amount, counted = values[table.at["Line"] - 1], values[table.at["Counts as"] - 1]
    assert isinstance(amount, float)
    assert isinstance(counted, float)
    if (line.packs or 0) * (line.unit_price_minor or 0) == line.line_minor != 0:
        product = f"{at['Packs']}{row}*{at['Price each']}{row}"
        values[table.at["Line"] - 1] = Formula(f"=ROUND({product},{table.page.styles.digits})", amount)
    paid, plain = f"{at['Paid in all']}{row}", f"{at['Line']}{row}"
    if line.kind not in NOT_BOUGHT:
        bought = f"{at['Bought']}{row}"
        plain = f'IF(OR({bought}="{RETURNED}",{bought}="{SOLD_OUT}"),0,{plain})'
    values[table.at["Counts as"] - 1] = Formula(f"=IF(ISNUMBER({paid}),{paid},{plain})", counted)
    plain_look: dict[str, object] = {"bg_color": palette.WHITE, "bold": False}
    no_tick = (lambda heading: plain_look if heading == "Bought" else {}) if line.kind in NOT_BOUGHT else None
    table.row(id, values, look=no_tick)


def _yours(table: Table, parts: list[Rows]) -> None:
    """What the user's cells take, and how a row looks once it is ticked or dearer than planned."""
    page, styles = table.page, table.page.styles
    said = [TICK, RETURNED, SOLD_OUT]
    for part in parts:
        page.sheet.data_validation(
            table.area("Bought", part.first, part.first + part.goods - 1),
            {"validate": "list", "source": said, "ignore_blank": True, "show_error": False},
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
