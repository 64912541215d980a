"""How sure a plan is, in words that screen, page and workbook share. No figure finer than a tenth is said."""

from __future__ import annotations

from dataclasses import dataclass

from budgetfix.base.money import write_money
from budgetfix.exports.lettering import count, day, span
from budgetfix.exports.lines import wrapped
from budgetfix.outcome.book import PlanBook, SessionRow
from budgetfix.outcome.odds import HARDLY, Chances, FallsOff, InTime, PriceRange, in_ten

NAMED = 3
"""What falls off first, as far as it is named in one sentence."""
SHORT_NAMED = 2
"""The same on the screen."""
NONE = "No chance can be told: every step has one figure only. Give low, likely and high for what you are unsure of."
NO_SESSIONS = "Without a list of hours there is no chance of fitting to tell."
SAME_TWICE = (
    "Who is slow at one thing is slow at others: that is counted in, so these are no odds of independent steps."
)


def cases(times: int) -> str:
    """A count of draws in a sentence: "in 7 of 10 cases", "nearly always"."""
    words = in_ten(times)
    return f"in {words.replace(' in ', ' of ')} cases" if words[0].isdigit() else words


def fits_words(times: int) -> str:
    """Whether all of it fits: "All of it fits in 7 of 10 cases"."""
    words = cases(times)
    return f"All of it fits {words}" if words.startswith("in ") else f"All of it {words} fits"


def chance_lines(book: PlanBook) -> tuple[str, ...]:
    """The sentences of a plan's chances, the most important first; empty where the book tells nothing of them."""
    told = book.chances
    if told is None:
        return ()
    money = price_lines(book)
    if not told.steps:
        return money
    if told.work is None:
        return (NONE, *money)
    fit = (NO_SESSIONS,) if told.fits is None else (_fit(told, told.fits),)
    return (*fit, *_reached(told), *money, _work(told))


def price_lines(book: PlanBook) -> tuple[str, ...]:
    """What prices may come to, beside what is held back; empty where none has a range."""
    odds = book.chances.money if book.chances is not None else None
    if odds is None:
        return ()
    least, most, held, lacking = (
        write_money(minor, book.currency)
        for minor in (odds.least_minor, odds.most_minor, odds.held_back_minor, odds.lacking_minor)
    )
    between = f"Prices may come out between {least} and {most}"
    if odds.covered is None:
        return (f"{between}.",)
    above = write_money(odds.above_minor, book.currency)
    kept = (
        f"; {held} is held back: it covers that"
        if odds.held_back_minor
        else f", {above} above plan; nothing is held back"
    )
    kept += f" but for {lacking}" if odds.held_back_minor and odds.lacking_minor else ""
    return (f"{between}{kept}. The money that there is covers them {cases(odds.covered)}.",)


def _fit(told: Chances, fits: int) -> str:
    falls = [one for one in told.falls if one.times >= HARDLY][:NAMED]
    if not falls:
        return f"{fits_words(fits)}."
    first = "this falls off first" if len(falls) == 1 else "these fall off first"
    return f"{fits_words(fits)}; if not, {first}: {'; '.join(map(_fall, falls))}."


def short_lines(book: PlanBook, lines: int) -> tuple[str, ...]:
    """The chances of fitting as a few lines for the screen: two names, one or none, and what is reached if it fits."""
    told = book.chances
    if told is None or told.work is None or told.fits is None:
        return tuple(text for text in chance_lines(book)[:1] if text not in price_lines(book))
    names = [one for one in told.falls if one.times >= HARDLY][:SHORT_NAMED]
    reached = [f" On average {told.reached} % of the improvement is reached."] if _reached(told) else []
    texts = [_short_fit(told.fits, names[:shown]) for shown in range(len(names), -1, -1)]
    fitting = [
        text + more for text in texts for more in (*reached, "") if len(wrapped(f"CHANCES  {text}{more}", 6)) <= lines
    ]
    return (fitting[0],) if fitting else (texts[-1],)


def _short_fit(fits: int, falls: list[FallsOff]) -> str:
    if not falls:
        return f"{fits_words(fits)}."
    first, rest = falls[0], falls[1:]
    names = f"{first.name} ({cases(first.times)}, {count(first.worth, 'point')})"
    names += "".join(f"; then {one.name}" for one in rest)
    return f"{fits_words(fits)}; if not, off first: {names}."


def _fall(one: FallsOff) -> str:
    return f"{one.name} ({cases(one.times)}, {count(one.worth, 'point')})"


def _reached(told: Chances) -> tuple[str, ...]:
    if told.reached is None or told.reached_worst is None or not told.falls:
        return ()
    worst = f", in nine of ten cases {told.reached_worst} % or more" if told.reached_worst < 100 else ""
    return (f"On average {told.reached} % of the planned improvement is reached{worst}.",)


def _work(told: Chances) -> str:
    assert told.work is not None
    least, most = span(told.work.least), span(told.work.most)
    sure = f"; {told.sure} of {count(told.steps, 'step')} with one figure taken as sure" if told.sure else ""
    return f"All work together usually takes between {least} and {most}, {span(told.work.planned)} planned{sure}."


def session_words(row: SessionRow) -> str:
    """`Session 2, Sat 6 Jun`."""
    return f"Session {row.number}, {day(row.on)}" if row.on is not None else f"Session {row.number}"


def leave_words(one: InTime) -> str:
    """What to leave first where a session may overrun; empty where nothing is to be left."""
    return f"If time runs short, leave first: {one.leave}." if one.leave else ""


@dataclass(frozen=True, slots=True)
class InTimeRow:
    """A session on the page: how often nothing is put off at its end, and what to leave first."""

    name: str
    often: str
    leave: str


def in_time(book: PlanBook) -> tuple[InTimeRow, ...]:
    """Every session with work planned in it; empty where no chance can be told."""
    if book.chances is None:
        return ()
    rows = {row.number: row for row in book.sessions or ()}
    return tuple(
        InTimeRow(session_words(rows[one.session]), in_ten(one.times), leave_words(one))
        for one in book.chances.sessions
    )


def price_words(one: PriceRange, currency: str) -> str:
    """`3 packs at 20.00 to 30.00, likely 22.00; planned at 24.00`."""
    low, likely, high, planned = (
        write_money(minor, currency) for minor in (one.low_minor, one.likely_minor, one.high_minor, one.planned_minor)
    )
    packs = f"{count(one.packs, 'pack')} at " if one.packs else ""
    return f"{packs}{low} to {high}, likely {likely}; planned at {planned}."
