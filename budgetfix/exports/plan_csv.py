"""The lists as CSV twins (RFC 4180): CRLF, quotes doubled, and no text that a spreadsheet would run."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable

from budgetfix.base.money import write_money
from budgetfix.exports.by_person import times, who_words, workers_of
from budgetfix.exports.money_days import buy_from
from budgetfix.outcome.book import MoneyLine, PlanBook

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
    """Every line of money, then the total; amounts as plain numbers of the currency."""
    spent: dict[str, Cell] = {"kind": "total", "line": write_money(book.spent_minor, book.currency)}
    rows = [*(_bought(line, book.currency) for line in book.money), spent]
    heads = (*BUY_HEADS, "buy from") if book.purses else BUY_HEADS
    return csv_bytes(heads, [tuple(row.get(head) for head in heads) for row in rows])


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
    """Every step in working order."""
    sessions = {row.number: row for row in book.sessions or ()}
    many = len(workers_of(book)) > 1
    rows: list[tuple[Cell, ...]] = []
    for number, task in enumerate(book.tasks, start=1):
        session = sessions.get(task.session or 0)
        on = session.on if session is not None else None
        part = f"{task.step} of {task.steps}" if task.step else ""
        who, tools, cares = who_words(task, "; "), "; ".join(task.tools), "; ".join(task.cares)
        words = map(harmless, (task.name, part, task.text, who, tools, task.done_when, task.leaves, cares))
        name, part, text, who, tools, done, leaves, cares = words
        when = on.isoformat() if on is not None else None
        rows.append(
            (task.session, when, number, task.bag, name, part, text, task.minutes, task.low, task.high, task.people,
             who, tools, done, leaves, cares, None, None, harmless(times(session, task.spells, many)))
        )  # fmt: skip
    return csv_bytes(DO_HEADS, rows)
