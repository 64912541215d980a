"""The sheet `Summary`: five tiles, the figures, two bars, what to mind, and the three plans."""

from __future__ import annotations

from dataclasses import dataclass

from xlsxwriter.workbook import Workbook

from budgetfix.exports import palette
from budgetfix.exports.carried import RETURNED, SOLD_OUT, carried, whole_budget
from budgetfix.exports.fair_words import fair_lines, fair_proof
from budgetfix.exports.lettering import count, lines_on_paper
from budgetfix.exports.money_days import HEADS, money_day_rows, there_note
from budgetfix.exports.plan_book_buy import BuyAt
from budgetfix.exports.plan_book_do import DoAt, real_formula
from budgetfix.exports.plan_book_faults import FaultsAt, state_words
from budgetfix.exports.plan_book_page import AIR_POINTS, LINE_POINTS, Formula, Page, Styles, Value
from budgetfix.outcome.book import PlanBook, Sums

WIDE, GAP = 19.0, 1.5
PLACES = (1, 3, 5, 7, 9)
"""Columns of the tiles; the ones between are gaps."""
LAST = PLACES[-1]
SHEET_WIDTH = WIDE * len(PLACES) + GAP * (len(PLACES) - 1)
BLOCKS = 46


@dataclass(frozen=True, slots=True)
class Links:
    """Where the other sheets keep what the tiles count."""

    buy: BuyAt
    do: DoAt
    faults: FaultsAt


def summary_page(book: Workbook, styles: Styles, plan: PlanBook) -> Page:
    """The first sheet, still empty: it stands first, and is filled when the others are laid out."""
    page = Page(book, styles, "Summary", plan.title, verdict(plan), plan.title)
    page.sheet.fit_to_pages(1, 1)
    page.sheet.set_portrait()
    for place in range(1, LAST + 1):
        page.sheet.set_column(place, place, WIDE if place in PLACES else GAP)
    return page


def verdict(plan: PlanBook) -> str:
    """One sentence: how good this plan is, and how sure that is."""
    money = "no limit of money" if plan.budget_minor is None else "this money"
    hours = "no limit of hours" if plan.sessions is None else "these hours"
    room = f"{plan.room_words}. " if plan.room_words else ""
    if plan.proven:
        if plan.everything:
            sooner = "costs less" if plan.sessions is None else "ends sooner, or as soon for less"
            return f"{room}No other way to do everything {sooner}, with {money} and {hours}."
        if plan.sides:
            said = fair_proof(f", with {money} and {hours}")
            return f"{room}{said[:1].upper()}{said[1:]}."
        tried = count(plan.candidates, "remedy", "remedies")
        return f"{room}No other set of these {tried} takes away more, with {money} and {hours}."
    more = plan.bound - plan.improvement
    best = f"at best {count(more, 'point')} more exist" if more > 0 else "its points cannot be beaten"
    return f"{room}Stopped after {plan.seconds_limit:g} s, not proven: {best}."


def fill_summary(page: Page, plan: PlanBook, links: Links) -> None:
    """Tiles, figures, bars, cautions, the three plans, how to use the book."""
    _tiles(page, plan, links)
    row = _figures(page, plan, links, 6)
    row = _days(page, plan, row + 1) if plan.purses else row
    row = _bars(page, plan, row + 1)
    row = _plans(page, plan, row + 1)
    row = _lines(page, row + 1, "For both of you", list(fair_lines(plan)), palette.INK)
    row = _lines(
        page, row + (1 if plan.sides else 0), "What to mind", [f"! {care}" for care in plan.cautions], palette.WARN
    )
    row = _lines(page, row + (1 if plan.cautions else 0), "Good to know", list(plan.notes), palette.INK)
    _lines(page, row + (1 if plan.notes else 0), "How to use this book", _how(plan), palette.INK)


HOW = [
    "The pale green cells on Buy and Do are yours; all else is worked out from them.",
    "Buy: tick what is bought, and type what you paid in all. Do: tick what is done, and type the real minutes.",
    "A book with your ticks in it is never written over.",
    "Local codes, your lease and licensed trades come before anything that is said here.",
]
HOW_REPLAN = [
    "Buy: tick what is bought (or say returned, or sold out), and type what you paid in all.",
    "Do: tick what is done, and type the real minutes.",
    "When things go otherwise: budgetfix replan reads your ticks, plans the rest, and keeps this book beside the new.",
]


def _how(plan: PlanBook) -> list[str]:
    """A book that can be read back says so."""
    return HOW if plan.remembered is None else [HOW[0], *HOW_REPLAN, *HOW[3:]]


def _tiles(page: Page, plan: PlanBook, links: Links) -> None:
    faults = [row for row in plan.faults if row.state != "new"]
    fixed = sum(1 for row in faults if row.state == "fixed")
    share: Value = "none found"
    if faults:
        states = links.faults.states
        known = f'(ROWS({states})-COUNTIF({states},"{state_words("new")}"))'
        share = Formula(f'=COUNTIF({states},"{state_words("fixed")}")/{known}', fixed / len(faults))
    tiles: list[tuple[str, Value, str]] = [
        ("Faults fixed, hazards too", share, "0%"),
        ("Hazards left", f"{plan.hazards_after} of {plan.hazards_before}" if plan.hazards_before else "none", ""),
        _money_tile(page, plan),
        ("Bought", _bought(links.buy), ""),
        ("Done", _done(links.do), ""),
    ]
    page.sheet.set_row(3, 20)
    page.sheet.set_row(4, 32)
    for place, (label, value, shown) in zip(PLACES, tiles, strict=True):
        ground: dict[str, object] = {"bg_color": palette.STRAW, "indent": 1, "align": "left"}
        page.put(3, place, label, page.styles("", font_color=palette.QUIET, font_size=9, **ground))
        big: dict[str, object] = {"font_size": 17, "bold": True, "font_color": palette.TEAL, "shrink": True, **ground}
        page.put(4, place, value, page.styles("", num_format=shown, **big) if shown else page.styles("", **big))
    page.sheet.conditional_format(4, PLACES[2], 4, PLACES[2], page.styles.below_zero())


def _money_tile(page: Page, plan: PlanBook) -> tuple[str, Value, str]:
    shown = page.styles.money.removesuffix("_)")
    spent_minor, budget_minor = plan.spent_minor + carried(plan).paid_minor, whole_budget(plan)
    if budget_minor is None:
        return "Spent", Formula("=real_total", page.styles.amount(spent_minor)), shown
    left = budget_minor - plan.held_back_minor - spent_minor
    return "Money left", Formula("=money_left", page.styles.amount(left)), shown


def _bought(buy: BuyAt) -> Value:
    """What went back or was not to be had is neither bought nor still to be bought."""
    if not buy.ticks:
        return "nothing"
    gone = "".join(f'-COUNTIF({area},"{word}")' for area in buy.ticks for word in (RETURNED, SOLD_OUT))
    ticked, rows = ("+".join(f"{name}({area})" for area in buy.ticks) for name in ("COUNTA", "ROWS"))
    return Formula(f'={ticked}{gone}&" of "&{rows}{gone}', f"{buy.ticked} of {buy.ticked_of}")


def _done(do: DoAt) -> Value:
    if not do.steps:
        return "nothing"
    ticked, rows = ("+".join(f"{name}({area})" for area in do.ticks) for name in ("COUNTA", "ROWS"))
    return Formula(f'={ticked}&" of "&{rows}', f"{do.done} of {do.steps}")


def _head(page: Page, row: int, words: str) -> int:
    page.sheet.set_row(row, 20)
    for place in range(1, LAST + 1):
        page.put(row, place, None, page.styles("", bottom=2, bottom_color=palette.TEAL))
    look = page.styles("", bold=True, font_size=12, font_color=palette.TEAL, bottom=2, bottom_color=palette.TEAL)
    page.put(row, 1, words, look)
    return row + 1


def _figures(page: Page, plan: PlanBook, links: Links, row: int) -> int:
    row = _head(page, row, "In numbers")
    amount = page.styles.amount
    budget_minor, before = whole_budget(plan), carried(plan)
    if budget_minor is not None:
        row = _figure(page, row, "Budget", amount(budget_minor), "money", name="budget")
        row = _figure(page, row, "Held back", amount(plan.held_back_minor), "money", name="held_back")
    if plan.chances is not None and plan.chances.money is not None:
        above = amount(plan.chances.money.above_minor)
        row = _figure(page, row, "With every price at its highest, dearer by", above, "money")
    if before.lines:
        row = _figure(page, row, "Paid before this plan", amount(before.paid_minor), "money")
    spent = amount(plan.spent_minor + before.paid_minor)
    with_that = ", with that" if before.lines else ""
    row = _figure(page, row, f"Planned to spend{with_that}", Formula("=planned_total", spent), "money")
    row = _figure(page, row, "Spent or promised, at real prices", Formula("=real_total", spent), "money")
    row = _figure(page, row, "Points before, safety apart", plan.points_before, "whole", name="points before")
    row = _figure(page, row, "Points after", plan.points_after, "whole", name="points after")
    worked = sum(task.person_minutes for task in plan.tasks)
    work = "Work still to do" if before.steps else "Planned work"
    row = _figure(page, row, f"{work}, minutes of every person", worked, "whole")
    real: Value = 0
    if links.do.steps:
        real = Formula(real_formula(links.do.real, links.do.people, links.do.help), links.do.worked)
    return _figure(page, row, "Real work so far", real, "whole")


def _days(page: Page, plan: PlanBook, row: int) -> int:
    """Money as it comes: a row for each day."""
    row = _head(page, row, "Money as it comes")
    edge: dict[str, object] = {"bottom": 1, "bottom_color": palette.LINE}
    for place, head in zip(PLACES, HEADS, strict=True):
        side: dict[str, object] = {} if place == PLACES[0] else {"align": "right", "num_format": "@_)"}
        page.put(row, place, head, page.styles("", font_color=palette.QUIET, font_size=9, **side))
    for when, *sums in money_day_rows(plan):
        row += 1
        for place in range(1, LAST + 1):
            page.put(row, place, None, page.styles("", **edge))
        page.put(row, 1, when, page.styles("", bold=True, **edge))
        for place, minor in zip(PLACES[1:], sums, strict=True):
            page.put(row, place, page.styles.amount(minor), page.styles("money", **edge))
        page.sheet.set_row(row, 18)
    if there_note(plan):
        row += 1
        page.put(row, 1, there_note(plan), page.styles("", font_color=palette.QUIET, font_size=9))
    return row + 1


def _figure(page: Page, row: int, label: str, value: Value, look: str, name: str = "") -> int:
    edge: dict[str, object] = {"bottom": 1, "bottom_color": palette.LINE}
    for place in range(1, PLACES[2] + 1):
        page.put(row, place, None, page.styles("", **edge))
    page.put(row, 1, label, page.styles("", **edge))
    page.put(row, PLACES[2], value, page.styles(look, bold=True, **edge))
    if name:
        page.names[name] = page.ref(row, PLACES[2], away=True)
    page.sheet.set_row(row, 18)
    return row + 1


def _bars(page: Page, plan: PlanBook, row: int) -> int:
    row = _head(page, row, "Points before and after")
    top = max(plan.points_before, plan.points_after, 1)
    for word, points, color in (
        ("Before", plan.points_before, palette.WARN),
        ("After", plan.points_after, palette.TEAL),
    ):
        source = page.names["points " + word.lower()]
        blocks = -(-points * BLOCKS // top)
        made = Formula(f'=REPT("█",ROUNDUP({source}/{top}*{BLOCKS},0))&"  "&FIXED({source},0)',
                       f"{'█' * blocks}  {points:,}")  # fmt: skip
        page.put(row, 1, word, page.styles(""))
        page.put(row, 3, made, page.styles("", font_color=color))
        page.sheet.set_row(row, 18)
        row += 1
    return row


def _plans(page: Page, plan: PlanBook, row: int) -> int:
    row = _head(page, row, "Three plans for what is left" if carried(plan) else "Three plans")
    edge: dict[str, object] = {"bottom": 1, "bottom_color": palette.LINE}
    heads = ("Plan", "Spend", "Points fixed", "Hazards left", "Minutes")
    for place, head in zip(PLACES, heads, strict=True):
        side: dict[str, object] = {} if head == "Plan" else {"align": "right", "num_format": "@_)"}
        page.put(row, place, head, page.styles("", font_color=palette.QUIET, font_size=9, **side))
    row += 1
    for name, sums in (("Best (this book)", plan.best), ("Recommended", plan.recommended), ("Free", plan.free)):
        for place in range(1, LAST + 1):
            page.put(row, place, None, page.styles("", **edge))
        page.put(row, 1, name, page.styles("", bold=True, **edge))
        for place, (value, look) in zip(PLACES[1:], _sums(page, sums), strict=True):
            page.put(row, place, value, page.styles(look, **edge))
        page.sheet.set_row(row, 18)
        row += 1
    note = "Recommended: the least money for nine tenths of the best plan's effect, with the same hazards gone."
    page.put(row, 1, note, page.styles("", font_color=palette.QUIET, font_size=9))
    return row + 1


def _sums(page: Page, sums: Sums | None) -> tuple[tuple[Value, str], ...]:
    if sums is None:
        return (("none found", "quiet"), (None, ""), (None, ""), (None, ""))
    return (
        (page.styles.amount(sums.spent_minor), "money"),
        (sums.improvement, "whole"),
        (sums.hazards_after, "whole"),
        (sums.minutes, "whole"),
    )


def _lines(page: Page, row: int, head: str, lines: list[str], color: str) -> int:
    if not lines:
        return row
    row = _head(page, row, head)
    for line in lines:
        look = page.styles("", text_wrap=True, font_color=color)
        page.sheet.merge_range(row, 1, row, LAST, "", look)
        page.put(row, 1, line, look)
        page.sheet.set_row(row, lines_on_paper(line, SHEET_WIDTH) * LINE_POINTS + AIR_POINTS)
        row += 1
    return row


__all__ = ["Links", "fill_summary", "summary_page", "verdict"]
