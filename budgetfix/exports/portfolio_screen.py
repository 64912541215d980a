"""The terminal's words for several jobs: 79 columns, a line for each, the sums, and who has which piece."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from budgetfix.base.money import write_money
from budgetfix.exports.lettering import count, day
from budgetfix.exports.lines import left, plain, right, wrapped
from budgetfix.exports.portfolio_rows import shop_sums
from budgetfix.outcome.portfolio import House, Piece, Portfolio

WIDTHS = (24, 11, 11, 8, 8, 9)
"""Columns of job, spent, budget, points before and after, hazards."""
CONTESTED = 8
"""Pieces that are told on the screen; the workbook has all."""


def portfolio_text(portfolio: Portfolio, notes: Iterable[str] = (), *, unicode: bool = True) -> str:
    """Verdict, one line a job and the sums, the stock, what to buy, the proof, notes, and what was written."""
    lines = [_verdict(portfolio), "", _row("job", "spent", "budget", "before", "after", "hazards")]
    lines += [_house(portfolio, house) for house in portfolio.houses]
    lines += [_sums(portfolio), "  before and after: points of what is off"]
    lines += _stock(portfolio)
    lines += ["", *_buy(portfolio), "", *_proof(portfolio)]
    lines += [line for note in (*portfolio.notes, *notes) for line in wrapped(f"NOTE  {note}", 6)]
    lines += ["", *_wrote(portfolio)]
    return plain("\n".join(lines), unicode)


def _verdict(portfolio: Portfolio) -> str:
    dated = [house for house in portfolio.houses if house.first is not None]
    first = min((house.first for house in dated if house.first), default=None)
    until = max((house.until for house in dated if house.until), default=None)
    days = f", {day(first)} to {day(until)}" if first is not None and until is not None else ""
    return f"{portfolio.name}: {count(len(portfolio.houses), 'job')}{days}. Money in {portfolio.currency}."


def _row(name: str, *cells: str) -> str:
    line = left(name, WIDTHS[0]) + "".join(right(cell, width) for cell, width in zip(cells, WIDTHS[1:], strict=True))
    return f"  {line}".rstrip()


def _house(portfolio: Portfolio, house: House) -> str:
    book = house.book
    return _row(
        house.name,
        write_money(book.spent_minor, portfolio.currency),
        "no limit" if book.budget_minor is None else write_money(book.budget_minor, portfolio.currency),
        f"{book.points_before:,}",
        f"{book.points_after:,}",
        f"{book.hazards_before} to {book.hazards_after}",
    )


def _sums(portfolio: Portfolio) -> str:
    books, budget = [house.book for house in portfolio.houses], portfolio.budget_minor
    return _row(
        "together",
        write_money(portfolio.spent_minor, portfolio.currency),
        "no limit" if budget is None else write_money(budget, portfolio.currency),
        f"{sum(book.points_before for book in books):,}",
        f"{sum(book.points_after for book in books):,}",
        f"{sum(book.hazards_before for book in books)} to {sum(book.hazards_after for book in books)}",
    )


def _stock(portfolio: Portfolio) -> list[str]:
    if not portfolio.pieces:
        return []
    out = [piece for piece in portfolio.pieces if piece.stands]
    verb = "stands" if len(out) == 1 else "stand"
    lines = ["", f"STOCK {len(out)} of {count(len(portfolio.pieces), 'piece')} {verb} in houses."]
    scarce = [piece for piece in out if piece.missed]
    lines += [line for piece in scarce[:CONTESTED] for line in wrapped(f"      {_scarce(piece)}", 8)]
    more = len(scarce) - CONTESTED
    return [*lines, f"      and {count(more, 'piece')} more, see the sheet Stock"] if more > 0 else lines


def _scarce(piece: Piece) -> str:
    """`Ivory rug: Oak Lane until Mon 20 Jul; Elm Street and Pine go without.`."""
    where = ", ".join(
        one.house + (f" until {day(one.until)}" if one.until is not None else " all the time") for one in piece.stands
    )
    verb = "goes" if len(piece.missed) == 1 else "go"
    return f"{piece.name}: {where}; {' and '.join(piece.missed)} {verb} without."


def _buy(portfolio: Portfolio) -> list[str]:
    sums = shop_sums(portfolio)
    if not sums:
        return ["BUY   nothing: everything in these plans is free."]
    parts = [f"{place} {write_money(total, portfolio.currency)}" for place, total in sums]
    spent = write_money(portfolio.spent_minor, portfolio.currency)
    return wrapped(f"BUY   {', '.join(parts)}: {spent} in all", 6)


def _proof(portfolio: Portfolio) -> list[str]:
    if not portfolio.proven:
        more = portfolio.bound - portfolio.improvement
        return wrapped(f"STOPPED after {portfolio.seconds_limit:g} s a job: at most {more:,} points more exist.", 6)
    if portfolio.pieces:
        return wrapped("PROOF no other way to share the stock, and no other plans, take away more in all.", 6)
    return wrapped("PROOF no other plans take away more.", 6)


def _wrote(portfolio: Portfolio) -> list[str]:
    names = sorted({file.replace("\\", "/").rsplit("/", 1)[-1] for house in portfolio.houses for file in house.files})
    folders = ", ".join(house.folder for house in portfolio.houses)
    return [
        *wrapped(f"Wrote {', '.join(portfolio.files)}", 2),
        *wrapped(f"  and in each of {folders}: {', '.join(names)}", 4),
    ]


@dataclass(frozen=True)
class Looked:
    """One job as inspected: its sums."""

    folder: str
    name: str
    faults: int
    points: int
    hazards: int


def inspections_text(folder: str, looked: Sequence[Looked], notes: Iterable[str] = (), *, unicode: bool = True) -> str:
    """One line a job and the sums, then how to see one in full."""

    def row(name: str, faults: str, points: str, hazards: str) -> str:
        return f"  {left(name, 40)}{right(faults, 10)}{right(points, 12)}{right(hazards, 12)}".rstrip()

    lines = [f"{count(len(looked), 'job')} in {folder}", "", row("job", "faults", "points", "hazards")]
    lines += [row(one.name, f"{one.faults:,}", f"{one.points:,}", f"{one.hazards:,}") for one in looked]
    faults, points, hazards = (sum(getattr(one, key) for one in looked) for key in ("faults", "points", "hazards"))
    lines += [row("together", f"{faults:,}", f"{points:,}", f"{hazards:,}")]
    lines += [line for note in notes for line in wrapped(f"NOTE  {note}", 6)]
    worst = max(looked, key=lambda one: (one.hazards, one.points))
    first = f"{folder.rstrip('/')}/{worst.folder}"
    lines += ["", f"{'See one of them in full?':<31}budgetfix inspect {first}"]
    lines += [f"{'Plan them all together?':<31}budgetfix plan {folder}"]
    return plain("\n".join(lines), unicode)
