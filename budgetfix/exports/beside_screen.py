"""The terminal's words for two plans side by side: 79 columns, nothing that needs color."""

from __future__ import annotations

from collections.abc import Callable

from budgetfix.base.money import write_money
from budgetfix.exports.lettering import count
from budgetfix.exports.lines import hours_words, left, plain, right, wrapped
from budgetfix.outcome.beside import Beside, Deed, Ending, Good, OnePlan
from budgetfix.outcome.book import PlanBook

LABEL, COLUMN = 18, 18
NO_LIMIT = "no limit"
FAULTS_SHOWN = 8


def beside_text(found: Beside, *, unicode: bool = True) -> str:
    """Both names, the figures in three columns, what only one does, what is bought otherwise, and what it comes to."""
    lines = [line for mark, plan in _marked(found) for line in wrapped(f"{mark}  {plan.name}", 3)]
    lines += ["", _row("", "A", "B", "B against A"), *_figures(found)]
    lines += _deeds("ONLY A", found, found.only_first)
    lines += _deeds("ONLY B", found, found.only_second)
    lines += _otherwise(found)
    lines += _goods(found)
    lines += _faults(found)
    lines += ["", *wrapped(f"SO    {so(found)}", 6), *wrapped(f"PROOF {proof(found)}", 6)]
    return plain("\n".join(lines), unicode)


def _marked(found: Beside) -> tuple[tuple[str, OnePlan], tuple[str, OnePlan]]:
    return ("A", found.first), ("B", found.second)


def _row(label: str, first: str, second: str, change: str = "") -> str:
    return f"  {left(label, LABEL)}{right(first, COLUMN)}{right(second, COLUMN)}{right(change, COLUMN)}".rstrip()


def _figures(found: Beside) -> list[str]:
    one, other = found.first.book, found.second.book
    currency = one.currency
    rows = [
        _row("money there is", _budget(one), _budget(other), _more_budget(one, other)),
        _money("to spend", one.spent_minor, other.spent_minor, currency),
        _hours("hours there are", _there(one), _there(other)),
        _hours("work planned", one.best.minutes, other.best.minutes),
        _plain("sessions used", _sessions(one), _sessions(other)),
        _of("hazards left", (one.hazards_after, one.hazards_before), (other.hazards_after, other.hazards_before)),
        _of("points left", (one.points_after, one.points_before), (other.points_after, other.points_before)),
    ]
    mine, yours = found.first.catalog, found.second.catalog
    return rows + ([_row("catalogue", mine or "none", yours or "none")] if mine != yours else [])


def _budget(book: PlanBook) -> str:
    return NO_LIMIT if book.budget_minor is None else write_money(book.budget_minor, book.currency)


def _more_budget(one: PlanBook, other: PlanBook) -> str:
    if one.budget_minor is None or other.budget_minor is None:
        return ""
    return _signed(other.budget_minor - one.budget_minor, lambda minor: write_money(minor, one.currency))


def _there(book: PlanBook) -> int | None:
    return None if book.sessions is None else sum(row.minutes_available for row in book.sessions)


def _sessions(book: PlanBook) -> int:
    return len({task.session for task in book.tasks if task.session is not None})


def _signed(more: int, words: Callable[[int], str]) -> str:
    return "" if more == 0 else f"{'+' if more > 0 else '−'}{words(abs(more))}"


def _money(label: str, one: int, other: int, currency: str) -> str:
    def words(minor: int) -> str:
        return write_money(minor, currency)

    return _row(label, words(one), words(other), _signed(other - one, words))


def _hours(label: str, one: int | None, other: int | None) -> str:
    change = _signed(other - one, hours_words) if one is not None and other is not None else ""
    return _row(label, _span(one), _span(other), change)


def _span(minutes: int | None) -> str:
    return NO_LIMIT if minutes is None else hours_words(minutes)


def _plain(label: str, one: int, other: int) -> str:
    return _row(label, f"{one:,}", f"{other:,}", _signed(other - one, "{:,}".format))


def _of(label: str, one: tuple[int, int], other: tuple[int, int]) -> str:
    return _row(label, _part(*one), _part(*other), _signed(other[0] - one[0], "{:,}".format))


def _part(after: int, before: int) -> str:
    return f"{after:,} of {before:,}" if before else f"{after:,}"


def _cost(found: Beside, minor: int) -> str:
    return "free" if minor == 0 else write_money(minor, found.first.book.currency)


def _deeds(head: str, found: Beside, deeds: tuple[Deed, ...]) -> list[str]:
    rows = [f"{hours_words(one.minutes):>14} {_cost(found, one.cost_minor):>10}  {one.name}" for one in deeds]
    return ["", head, *(line for row in rows for line in wrapped(row, 27))] if rows else []


def _otherwise(found: Beside) -> list[str]:
    lines = []
    for pair in found.otherwise:
        for mark, deed in (("A", pair.first), ("B", pair.second)):
            cost = f"{hours_words(deed.minutes):>11} {_cost(found, deed.cost_minor):>10}"
            lines += wrapped(f"  {mark}{cost}  {deed.name}", 27)
    return ["", "BOTH, IN ANOTHER WAY", *lines] if lines else []


def _goods(found: Beside) -> list[str]:
    lines = [line for good in found.goods for line in wrapped(f"  {_good(found, good)}", 4)]
    return ["", "BOUGHT OTHERWISE", *lines] if lines else []


def _good(found: Beside, good: Good) -> str:
    currency = found.first.book.currency
    one, other = write_money(good.first_minor, currency), write_money(good.second_minor, currency)
    if not good.first_packs:
        return f"{good.name}: only B, {other}"
    if not good.second_packs:
        return f"{good.name}: only A, {one}"
    packs = f"{good.first_packs} for " if good.first_packs != good.second_packs else ""
    again = f"{good.second_packs} for " if packs else ""
    return f"{good.name}: A {packs}{one}, B {again}{other}"


def _faults(found: Beside) -> list[str]:
    shown = found.faults[:FAULTS_SHOWN]
    lines = [line for one in shown for line in wrapped(f"  {_ending(one)}", 4)]
    rest = len(found.faults) - len(shown)
    lines += [f"  and {count(rest, 'fault')} more"] if rest > 0 else []
    return ["", "FAULTS THAT END OTHERWISE", *lines] if lines else []


def _ending(one: Ending) -> str:
    where = f" ({one.subject})" if one.subject else ""
    return f"{one.title}{where}: A {_points(one.first)}, B {_points(one.second)}"


def _points(points: int | None) -> str:
    if points is None:
        return "has no such fault"
    return "gone" if points == 0 else f"{points:,} left"


def so(found: Beside) -> str:
    """What the second plan does more or less, for what: one sentence or two."""
    one, other = found.first.book, found.second.book
    if one.points_before != other.points_before or one.hazard_points_before != other.hazard_points_before:
        start = f"the rooms differ: {one.points_before:,} points to begin with in A, {other.points_before:,} in B. "
    else:
        start = ""
    if found.alike:
        return f"{start}B does and buys the same as A.".strip()
    gains = [
        _compared(one.hazards_after - other.hazards_after, "hazard", "hazards", "leaves {} fewer", "leaves {} more"),
        _compared(other.improvement - one.improvement, "point", "points", "takes away {} more", "takes away {} fewer"),
    ]
    first = " and ".join(part for part in gains if part) or "takes away as many points"
    means = [
        _means(other.spent_minor - one.spent_minor, lambda minor: write_money(minor, one.currency), ""),
        _means(other.best.minutes - one.best.minutes, hours_words, " work"),
    ]
    words = " and ".join(part for part in means if part) or "the same money and hours"
    return f"{start}B {first}, for {words}."


def _compared(more: int, one: str, many: str, better: str, worse: str) -> str:
    """`{}` becomes a number and its noun."""
    if more == 0:
        return ""
    return (better if more > 0 else worse).format(f"{abs(more):,} {one if abs(more) == 1 else many}")


def _means(more: int, words: Callable[[int], str], what: str) -> str:
    if more == 0:
        return ""
    return f"{words(abs(more))} {'more' if more > 0 else 'less'}{what}"


def proof(found: Beside) -> str:
    """How sure both are."""
    open_ = [
        f"{mark} was stopped after {plan.book.seconds_limit:g} s, at most "
        f"{plan.book.bound - plan.book.improvement:,} points more exist"
        for mark, plan in _marked(found)
        if not plan.book.proven
    ]
    if open_:
        return f"{'; '.join(open_)}."
    return "both are proven: in each job, no other set of its remedies does more. Nothing was written."
