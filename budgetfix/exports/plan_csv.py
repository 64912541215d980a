"""The lists as CSV twins (RFC 4180): CRLF, quotes doubled, and no text that a spreadsheet would run."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable

from budgetfix.base.money import write_money
from budgetfix.outcome.book import PlanBook

RISKY = ("=", "+", "-", "@", "\t", "\r")
"""What a spreadsheet may take for a formula (OWASP, CSV injection): such text gets a single quote in front."""

Cell = str | int | None
BUY_HEADS = (
    "kind", "product", "name", "size on the label", "accepted", "shop", "for", "packs", "price each", "line",
    "days to come", "bought", "paid in all",
)  # fmt: skip
DO_HEADS = (
    "session", "date", "step", "task", "part", "what", "minutes", "minutes low", "minutes high", "people", "who",
    "tools", "done when", "leaves in the wall", "mind", "done", "real minutes",
)  # fmt: skip


def harmless(text: str) -> str:
    """Text that no spreadsheet takes for a formula."""
    return f"'{text}" if text.startswith(RISKY) else text


def _csv(heads: tuple[str, ...], rows: Iterable[tuple[Cell, ...]]) -> bytes:
    out = io.StringIO(newline="")
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(heads)
    for row in rows:
        writer.writerow(["" if cell is None else cell for cell in row])
    return out.getvalue().encode()


def buy_csv(book: PlanBook) -> bytes:
    """Every line of money, then the total; amounts as plain numbers of the currency."""
    rows: list[tuple[Cell, ...]] = []
    for line in book.money:
        each = None if line.unit_price_minor is None else write_money(line.unit_price_minor, book.currency)
        words = (line.name, line.label, line.accepts, line.shop_name, "; ".join(line.tasks))
        name, label, accepts, shop, tasks = map(harmless, words)
        total = write_money(line.line_minor, book.currency)
        product = harmless(line.product or "")
        rows.append(
            (line.kind, product, name, label, accepts, shop, tasks, line.packs, each, total, line.lead_days, None, None)
        )
    spent = write_money(book.spent_minor, book.currency)
    rows.append(("total", None, None, None, None, None, None, None, None, spent, None, None, None))
    return _csv(BUY_HEADS, rows)


def do_csv(book: PlanBook) -> bytes:
    """Every step in working order."""
    dates = {row.number: row.on for row in book.sessions or ()}
    rows: list[tuple[Cell, ...]] = []
    for number, task in enumerate(book.tasks, start=1):
        on = dates.get(task.session or 0)
        part = f"{task.step} of {task.steps}" if task.step else ""
        who, tools, cares = ("; ".join(words) for words in (task.who, task.tools, task.cares))
        words = map(harmless, (task.name, part, task.text, who, tools, task.done_when, task.leaves, cares))
        name, part, text, who, tools, done, leaves, cares = words
        when = on.isoformat() if on is not None else None
        rows.append(
            (task.session, when, number, name, part, text, task.minutes, task.low, task.high, task.people, who, tools,
             done, leaves, cares, None, None)
        )  # fmt: skip
    return _csv(DO_HEADS, rows)
