"""The lists as CSV twins (RFC 4180): CRLF, quotes doubled, and no text that a spreadsheet would run."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable
from dataclasses import replace

from budgetfix.base.money import write_money
from budgetfix.exports.by_person import times, who_words, workers_of
from budgetfix.exports.carried import TICK, carried, in_session
from budgetfix.exports.money_days import buy_from
from budgetfix.outcome.book import MoneyLine, PlanBook, Task
from budgetfix.outcome.remembering import step_id
from budgetfix.outcome.so_far import LineBack

RISKY = ("=", "+", "-", "@", "\t", "\r")
"""What a spreadsheet may take for a formula (OWASP, CSV injection): such text gets a single quote in front."""

Cell = str | int | None
BUY_HEADS = (
    "kind", "product", "bag", "name", "size on the label", "accepted", "second choice", "take along", "shop", "for",
    "packs", "price each", "line", "most to pay", "days to come", "return by", "mind", "bought", "paid in all",
)  # fmt: skip
DO_HEADS = (
    "session", "date", "step", "bag", "task", "part", "what", "minutes", "minutes low", "minutes high", "people", "who",
    "tools", "done when", "leaves in the wall", "mind", "done", "real minutes",
    "time",
)  # fmt: skip


def harmless(text: str) -> str:
    """Text that no spreadsheet takes for a formula."""
    return f"'{text}" if text.startswith(RISKY) else text


def csv_bytes(heads: tuple[str, ...], rows: Iterable[tuple[Cell, ...]]) -> bytes:
    """A table as CSV; empty cells for None."""
    out = io.StringIO(newline="")
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(heads)
    for row in rows:
        writer.writerow(["" if cell is None else cell for cell in row])
    return out.getvalue().encode()


def buy_csv(book: PlanBook) -> bytes:
    """Every line of money, those of an earlier plan first, then the total; amounts as plain numbers of the currency.

    In the total, what is settled counts as paid, the rest as planned.
    """
    before = carried(book)
    in_all = book.spent_minor + before.paid_minor
    spent: dict[str, Cell] = {"kind": "total", "line": write_money(in_all, book.currency)}
    settled = (_settled(one, book.currency) for one in before.lines)
    rows = [*settled, *(_bought(line, book.currency) for line in book.money), spent]
    heads = (*BUY_HEADS, "buy from") if book.purses else BUY_HEADS
    return csv_bytes(heads, [tuple(row.get(head) for head in heads) for row in rows])


def _settled(one: LineBack, currency: str) -> dict[str, Cell]:
    """A line of which somebody said something, with that."""
    line = replace(one.planned.line, bag="", most_minor=None, any_price=False)
    paid = None if one.paid_minor is None else write_money(one.paid_minor, currency)
    said = TICK if one.state == "bought" else one.state
    return {**_bought(line, currency), "bought": said, "paid in all": paid}


def _bought(line: MoneyLine, currency: str) -> dict[str, Cell]:
    """One line of money, by heading."""

    def money(minor: int | None) -> str | None:
        return None if minor is None else write_money(minor, currency)

    texts = {
        "product": line.product or "",
        "bag": line.bag,
        "name": line.name,
        "size on the label": line.label,
        "accepted": line.accepts,
        "second choice": line.second_choice,
        "take along": line.take_along,
        "shop": line.shop_name,
        "for": "; ".join(line.tasks),
        "mind": line.mind,
    }
    until = line.return_by.isoformat() if line.return_by is not None else None
    return {
        "kind": line.kind,
        **{head: harmless(text) for head, text in texts.items()},
        "packs": line.packs,
        "price each": money(line.unit_price_minor),
        "line": money(line.line_minor),
        "most to pay": "any price" if line.any_price else money(line.most_minor),
        "days to come": line.lead_days,
        "return by": "no returns" if line.no_return else until,
        "buy from": line.buy_on.isoformat() if line.buy_on is not None else buy_from(line),
    }


def do_csv(book: PlanBook) -> bytes:
    """Every step in working order; those of an earlier plan that are done stand first, without a number."""
    before = carried(book)
    typed = dict(before.minutes)
    rows = [
        _step(book, in_session(one.planned, book.sessions), None, TICK if one.done else None, one.real_minutes)
        for one in before.steps
    ]
    rows += [
        _step(book, task, number, None, typed.get(step_id(task))) for number, task in enumerate(book.tasks, start=1)
    ]
    return csv_bytes(DO_HEADS, rows)


def _step(book: PlanBook, task: Task, number: int | None, tick: str | None, minutes: int | None) -> tuple[Cell, ...]:
    session = next((row for row in book.sessions or () if row.number == task.session), None)
    part = f"{task.step} of {max(task.step, task.steps)}" if task.step else ""
    who, tools, cares = who_words(task, "; "), "; ".join(task.tools), "; ".join(task.cares)
    words = map(harmless, (task.name, part, task.text, who, tools, task.done_when, task.leaves, cares))
    name, part, text, who, tools, done, leaves, cares = words
    when = session.on.isoformat() if session is not None and session.on is not None else None
    time = harmless(times(session, task.spells, len(workers_of(book)) > 1))
    bag = task.bag if number is not None else ""
    return (
        task.session, when, number, bag, name, part, text, task.minutes, task.low, task.high, task.people, who, tools,
        done, leaves, cares, tick, minutes, time,
    )  # fmt: skip
