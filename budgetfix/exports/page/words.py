"""The page's sentences about one plan: the verdict, what a stop of the slider is, when a session is."""

from __future__ import annotations

from collections.abc import Sequence

from budgetfix.base.money import write_money_long
from budgetfix.exports.carried import carried
from budgetfix.exports.fair_words import fair_proof
from budgetfix.exports.lettering import clocks, count, long_day, span
from budgetfix.framing.options import ERRAND
from budgetfix.outcome.book import FaultRow, PlanBook, SessionRow, Sums, Task
from budgetfix.outcome.money_lines import NOT_BOUGHT

NAMED = 5


def listed(names: Sequence[str]) -> str:
    """`Ann, Ben and Cleo`."""
    return " and ".join(part for part in (", ".join(names[:-1]), *names[-1:]) if part)


def fixed_of(faults: tuple[FaultRow, ...]) -> tuple[int, int]:
    """(faults fixed, faults there were); hazards are counted apart, what is new is no fault there was."""
    plain = [row for row in faults if not row.safety and row.state != "new"]
    return sum(1 for row in plain if row.state == "fixed"), len(plain)


def money_words(book: PlanBook, minor: int) -> str:
    """A sum of the book with its currency's sign."""
    return write_money_long(minor, book.currency)


def so_far_words(book: PlanBook) -> str:
    """`So far: 3 things bought, 4 steps done, €83.00 paid`; empty where nothing was before this plan."""
    before = carried(book)
    if not before:
        return ""
    bought = sum(1 for one in before.lines if one.state == "bought" and one.planned.line.kind not in NOT_BOUGHT)
    done = sum(1 for one in before.steps if one.done)
    parts = [f"{count(bought, 'thing')} bought"] if bought else []
    parts += [f"{count(done, 'step')} done"] if done else []
    parts.append(f"{money_words(book, before.paid_minor)} paid" if before.paid_minor else "nothing paid")
    return f"So far: {', '.join(parts)}. The lists below are what is left."


def price_words(book: PlanBook, spent_minor: int, minutes: int) -> tuple[str, str]:
    """What a plan takes, as (money, time); empty for neither."""
    time = f"{span(minutes)} of work" if minutes else ""
    return (money_words(book, spent_minor) if spent_minor else "no money" if minutes else ""), time


def does_words(book: PlanBook, faults: tuple[FaultRow, ...], hazards_after: int) -> str:
    """`4 of 7 faults go, and the one hazard is gone`."""
    fixed, of = fixed_of(faults)
    parts = [f"{fixed} of {count(of, 'fault')} {'goes' if of == 1 else 'go'}"] if of else []
    if book.hazards_before or hazards_after:
        parts.append(_hazards_go(book.hazards_before, hazards_after))
    new = sum(1 for row in faults if row.state == "new")
    parts += [f"{count(new, 'new fault comes', 'new faults come')}"] if new else []
    return listed(parts) or "no fault was found"


def _hazards_go(before: int, after: int) -> str:
    if not after:
        number = {1: "the one hazard is", 2: "both hazards are"}.get(before, f"all {before} hazards are")
        return f"{number} gone"
    if after >= before:
        return "the one hazard stays" if before == after == 1 else f"{count(after, 'hazard')} left"
    return f"{before - after} of {before} hazards {'is' if before - after == 1 else 'are'} gone"


def proof_words(book: PlanBook) -> str:
    """What is proven of the plan, or how far from the best it can be."""
    means = []
    if book.budget_minor is not None:
        means.append(money_words(book, book.budget_minor - book.held_back_minor))
    if book.sessions is not None:
        means.append("these hours")
    within = f" within {listed(means)}" if means else ""
    if not book.proven:
        more = book.bound - book.improvement
        rest = f"at most {count(more, 'point')} more exist" if more > 0 else "its points cannot be beaten"
        return f"the search stopped after {book.seconds_limit:g} s: {rest}"
    if book.sides:
        return f"proven: {fair_proof(within)}"
    if book.everything:
        sooner = "costs less" if book.sessions is None else "ends sooner, or as soon for less,"
        return f"proven: no other way to do everything {sooner}{within}"
    tried = f"no other set of these {book.candidates} remedies" if book.candidates > 1 else "no other choice"
    return f"proven: {tried} takes away more{within}"


def again_words(book: PlanBook) -> str:
    """What the second inspection found; empty for listed faults, which nobody can inspect."""
    if all(row.listed for row in book.faults):
        return ""
    odd = [f"{row.state}: {row.title} ({row.subject})" for row in book.faults if row.state in ("new", "worse")]
    return f"The changed room was inspected again: {'; '.join(odd) or 'nothing new, nothing worse'}."


def stop_words(book: PlanBook, sums: Sums, faults: tuple[FaultRow, ...]) -> str:
    """What the slider says aloud at a stop: `€137.80, 12 of 17 faults fixed, 3 h 25 min`."""
    fixed, of = fixed_of(faults)
    parts = [money_words(book, sums.spent_minor), f"{fixed} of {count(of, 'fault')} fixed", span(sums.minutes)]
    if book.hazards_before or sums.hazards_after:
        parts.append(f"{count(sums.hazards_after, 'hazard')} left")
    return ", ".join(parts)


def change_words(mine: tuple[Task, ...], there: tuple[Task, ...]) -> str:
    """What another plan does besides, and what it leaves out; empty where it does the same."""
    own, other = ({task.candidate: task.name for task in tasks if not task.candidate.startswith(ERRAND)}
                  for tasks in (mine, there))  # fmt: skip
    more = [name for id, name in other.items() if id not in own]
    less = [name for id, name in own.items() if id not in other]
    parts = [f"{word}: {_some(names)}." for word, names in (("Besides", more), ("Without", less)) if names]
    return " ".join(parts)


def _some(names: list[str]) -> str:
    """Some names, and how many more there are."""
    rest = len(names) - NAMED
    return " · ".join(names[:NAMED]) + (f" · and {rest} more" if rest > 0 else "")


def left_words(book: PlanBook, spent_minor: int) -> str:
    """What is left of the budget, or how far above it a plan is."""
    if book.budget_minor is None:
        return ""
    left = book.budget_minor - book.held_back_minor - spent_minor
    budget = money_words(book, book.budget_minor)
    held = f", {money_words(book, book.held_back_minor)} of it held back" if book.held_back_minor else ""
    if left < 0:
        return f"{money_words(book, -left)} more than there is (budget {budget}{held})"
    return f"{money_words(book, left)} left of {budget}{held}"


def session_words(row: SessionRow) -> tuple[str, str]:
    """A session's heading, and how full it is."""
    when = f", {long_day(row.on)}, {clocks(row.start_minute, row.end_minute)}" if row.on is not None else ""
    return f"Session {row.number}{when}", f"{span(row.minutes_used)} of {span(row.minutes_available)}"
