"""What changed since the plan was made, and why, in at most five lines of 79 columns."""

from __future__ import annotations

from collections.abc import Sequence

from budgetfix.base.money import write_money
from budgetfix.exports.lettering import columns_of, count
from budgetfix.exports.lines import WIDTH, cut, hours_words, plain
from budgetfix.outcome.book import PlanBook
from budgetfix.outcome.since import LACKS, Fact, Shift, Since, largest_first

MOST = 5
HEAD = 8
"""Columns of the word that a line begins with."""
NAME = 30
"""Columns of a name in a reason."""


def replan_lines(since: Since, book: PlanBook, *, unicode: bool = True) -> list[str]:
    """So far against plan, what is left, what fell off and came on; then what else must be known, as far as it fits."""
    said = [_line("SO FAR", _so_far(since, book)), _line("LEFT", _left(since, book)), *_troubles(since, book)]
    why = _open(since, book)
    shifts = [_shift("OFF", one, book) for one in since.off] + [_shift("ON", one, book) for one in since.on]
    if len(said) + len(shifts) + len(why) > MOST:
        shifts = [*_together("OFF", since.off, book), *_together("ON", since.on, book)]
        why = why or _reasons(since, book)
    return [plain(line, unicode) for line in (*said, *shifts, *why)][:MOST]


def _line(head: str, words: str) -> str:
    return cut(f"{head:<{HEAD}}{words}", WIDTH)


def _together(head: str, shifts: Sequence[Shift], book: PlanBook) -> list[str]:
    """All that fell off, or came on, in one line; the reasons where there is room for them."""
    if not shifts:
        return []
    parts = [", ".join(one.names) + (f" ({_reason(one.why, book)})" if one.why is not None else "") for one in shifts]
    if columns_of("; ".join(parts)) < WIDTH - HEAD:
        return [_line(head, "; ".join(parts) + ".")]
    names = [name for one in shifts for name in one.names]
    return [_line(head, _names(names, WIDTH - HEAD - 1) + ".")]


def _money(book: PlanBook, minor: int) -> str:
    return write_money(minor, book.currency)


def _so_far(since: Since, book: PlanBook) -> str:
    if not since.told:
        return "nothing is ticked and nothing was paid: all of the job is left."
    paid = f"{_money(book, since.paid_minor)} paid"
    paid += f", plan {_money(book, since.due_minor)}" if since.paid_minor != since.due_minor else ""
    if not since.paid_minor and not since.due_minor:
        paid = "nothing paid"
    steps, took, plan = f"{since.steps_done} of {count(since.steps, 'step')}", since.took_minutes, since.planned_minutes
    if took == plan:
        return f"{paid}; {steps} done."
    words = f"{paid}; {steps} in {hours_words(took)}, plan {hours_words(plan)}."
    return words if columns_of(words) <= WIDTH - HEAD else f"{paid}; {steps} in {took:,} min, plan {plan:,}."


def _left(since: Since, book: PlanBook) -> str:
    means = [_money(book, book.budget_minor)] if book.budget_minor is not None else []
    if since.sessions_left is not None:
        minutes = hours_words(since.minutes_left or 0)
        means.append(f"{minutes} in {count(since.sessions_left, 'session')}" if since.sessions_left else "no session")
    what = f"{count(len(book.tasks), 'step')} for {_money(book, book.spent_minor)}" if book.tasks else "nothing to do"
    gain = f", {book.improvement:,} points" if book.tasks else ""
    words = f"{' and '.join(means)}{': ' if means else ''}{what}"
    return f"{words}{gain}." if columns_of(f"{words}{gain}.") <= WIDTH - HEAD else f"{words}."


def _troubles(since: Since, book: PlanBook) -> list[str]:
    """What must not be overlooked."""
    found = []
    if since.over_budget_minor:
        over = f"{_money(book, since.over_budget_minor)} {book.currency}"
        found.append(_line("MONEY", f"{over} over the budget is paid: nothing that costs any is planned."))
    if since.unended:
        tail = ": begun, and not to be ended with what is left."
        found.append(_line("BEGUN", _names(since.unended, WIDTH - HEAD - columns_of(tail)) + tail))
    if since.sessions_left == 0 and since.steps_done < since.steps:
        found.append(_line("HOURS", "every session is over: give new dates under hours in brief.yaml."))
    return found


def _shift(head: str, shift: Shift, book: PlanBook) -> str:
    why = f": {_reason(shift.why, book)}" if shift.why is not None else ""
    return _line(head, _names(shift.names, WIDTH - HEAD - columns_of(why) - 1) + f"{why}.")


def _names(names: Sequence[str], columns: int) -> str:
    """As many names as there is room for, and how many there are besides."""
    for shown in range(len(names), 0, -1):
        more = f" and {len(names) - shown} more" if shown < len(names) else ""
        words = ", ".join(names[:shown]) + more
        if columns_of(words) <= columns:
            return words
    more = f" and {len(names) - 1} more" if len(names) > 1 else ""
    return cut(names[0], max(8, columns - columns_of(more))) + more


def _reason(fact: Fact, book: PlanBook) -> str:
    """A fact behind a remedy that fell off: goods that are not to be had are its own, and need no name."""
    return {"sold out": "sold out", "returned": "given back"}.get(fact.kind) or _fact(fact, book)


def _short(name: str) -> str:
    """A long name as far as its words go whole."""
    if columns_of(name) <= NAME:
        return name
    whole = cut(name, NAME)[:-1]
    kept = whole.rpartition(" ")[0].rstrip(" ,;:") if name[len(whole) : len(whole) + 1] != " " else whole.rstrip(" ,;:")
    return kept or cut(name, NAME)


def _fact(fact: Fact, book: PlanBook) -> str:
    money, time, name = _money(book, fact.amount), hours_words(fact.amount), _short(fact.name)
    sentences = {
        "dearer": f"{name} {money} dearer",
        "cheaper": f"{name} {money} cheaper",
        "price": f"{name} costs {money} more now",
        "sold out": f"{name} sold out",
        "returned": f"{name} given back",
        "delivery": f"{name} delivers again for {money}",
        "longer": f"{name} took {time} longer",
        "quicker": f"{name} took {time} less",
        "gone": f"session {name} over, {time} not done",
        "late": f"ordered {count(fact.amount, 'day')} later",
        "more money": f"{money} more in the budget",
        "less money": f"{money} less in the budget",
        "more hours": f"{time} more in the list of hours",
        "fewer hours": f"{time} less in the list of hours",
        "catalog": "the catalogue is another one now",
        "survey": "the room was measured again",
        "pace": f"work is reckoned {fact.amount / 100:.2f} times as long now",
        "no time": "no time for it any more",
        "no money": "no money for it any more",
        "neither": "neither money nor time for it any more",
        "brief": "the brief is another one now",
        "faults": "the list of faults is another one now",
        "instead": f"instead of {name}",
        "gives way": f"instead there is {name}",
        "freed": "with what that sets free",
    }
    return sentences[fact.kind]


def _open(since: Since, book: PlanBook) -> list[str]:
    """The facts behind a lack of time or money; where no fact explains a shift, that nothing does."""
    lacks = {one.why.kind for one in since.off if one.why is not None and one.why.kind in LACKS}
    kinds = [kind for lack, behind in LACKS.items() if lack in lacks for kind in behind]
    words = [_fact(fact, book) for fact in largest_first(since.facts) if fact.kind in kinds]
    if words:
        return [_line("WHY", f"{_some(words, WIDTH - HEAD - 1)}.")]
    if all(one.why is not None for one in since.off) and (since.facts or all(one.why is not None for one in since.on)):
        return []
    return [_line("WHY", "no single fact explains it: what is left is chosen anew.")]


def _reasons(since: Since, book: PlanBook) -> list[str]:
    """The reasons for which something fell off, where its line has no room for them; rivals come last."""
    known = [one.why for one in since.off if one.why is not None]
    order = sorted(dict.fromkeys(known), key=lambda fact: fact.kind == "gives way")
    return [_line("WHY", f"{_some([_fact(fact, book) for fact in order], WIDTH - HEAD - 1)}.")] if order else []


def _some(words: Sequence[str], columns: int) -> str:
    """As many as there is room for, whole ones."""
    shown = max((at for at in range(1, len(words) + 1) if columns_of("; ".join(words[:at])) <= columns), default=1)
    return "; ".join(words[:shown])
