"""The terminal's words for a plan: 79 columns, nothing that needs color."""

from __future__ import annotations

from budgetfix.base.money import write_money
from budgetfix.exports.chance_words import price_lines, short_lines
from budgetfix.exports.fair_words import fair_lines, fair_proof
from budgetfix.exports.lettering import clocks, count, day
from budgetfix.exports.lines import WIDTH, bar, cut, hours_words, left, plain, right, wrapped
from budgetfix.exports.money_days import money_day_lines
from budgetfix.exports.more_words import next_lines
from budgetfix.exports.pace_words import pace_line
from budgetfix.outcome.book import PlanBook, SessionRow, Sums, Task

LEFT_OUT_SHOWN = 4
SURE_SHOWN = 3
"""Lines about chances: whether it fits, and what is reached if not; the rest is in the workbook."""
CARE, NAME = "!", 44
COMES = " as it comes"
"""Of money, where it comes by date."""


def plan_text(book: PlanBook, files: tuple[str, ...], *, unicode: bool = True) -> str:
    """Verdict, steps by session, what to buy, what was left out, the proof, what more would do."""
    lines = _verdict(book)
    lines += _steps(book) if book.tasks else ["", _nothing(book)]
    lines += ["", *_buy(book)] if book.tasks else []
    lines += _left_out(book)
    if book.tasks or book.candidates or not book.proven:
        lines += ["", *_proof(book), *_three(book), *_both(book), *_more(book)]
    lines += _chances(book)
    lines += [line for note in book.notes for line in wrapped(f"NOTE  {note}", 6)]
    lines += ["", *wrapped(f"Wrote {', '.join(files)}", 2)] if files else []
    return plain("\n".join(lines), unicode)


def _nothing(book: PlanBook) -> str:
    if book.proven and not book.candidates and book.so_far is not None and book.so_far.done:
        return "Everything is done."
    if book.proven:
        return "The best plan is to do nothing: no candidate fits and helps."
    return "Nothing was found in the time: give it more with --seconds."


def _money(book: PlanBook, minor: int) -> str:
    return "free" if minor == 0 else write_money(minor, book.currency)


def _verdict(book: PlanBook) -> list[str]:
    budget = "no limit of money" if book.budget_minor is None else (
        f"{write_money(book.budget_minor, book.currency)} {book.currency} to spend{COMES if book.purses else ''}"
    )  # fmt: skip
    held = f" ({write_money(book.held_back_minor, book.currency)} of it held back)" if book.held_back_minor else ""
    hours = "no limit of hours"
    if book.sessions is not None:
        minutes = sum(row.minutes_available for row in book.sessions)
        there = sum(1 for row in book.sessions if not row.gone)
        hours = f"{hours_words(minutes)} in {count(there, 'session')}"
    crew = f", {len(book.people)} people" if len(book.people) > 1 else ""
    before, after = book.points_before, book.points_after
    return [
        *wrapped(f"{book.title}: {budget}{held}, {hours}{crew}.", 2),
        "",
        f"  before  {left(bar(before, max(before, after)), 40)} {right(f'{before:,}', 7)} points",
        f"  after   {left(bar(after, max(before, after)), 40)} {right(f'{after:,}', 7)} points",
        f"          {_gone(book)}",
    ]


def _gone(book: PlanBook) -> str:
    faults = [row for row in book.faults if not row.safety and row.state != "new"]
    fixed = sum(1 for row in faults if row.state == "fixed")
    words = f"{fixed} of {len(faults)} faults go"
    if book.hazards_before:
        words += f"; hazards: {book.hazards_before} before, {book.hazards_after} after"
    new = sum(1 for row in book.faults if row.state == "new")
    return words + (f"; {new} new, see below" if new else "")


def _row(number: str, what: str, marks: str, minutes: str, cost: str, worth: str) -> str:
    """One line of the table; a long figure takes its room from the words."""
    figures = f"{marks:<2} {minutes:>6} {cost:>8} {worth:>6}"
    return f"{number:>4}  {left(what, WIDTH - 7 - len(figures))} {figures}".rstrip()


def _steps(book: PlanBook) -> list[str]:
    lines = ["", _row("step", "what to do", "", "min", "cost", "worth")]
    sessions = {row.number: row for row in book.sessions or ()}
    current: int | None = None
    for number, task in enumerate(book.tasks, start=1):
        if task.session != current and task.session is not None:
            current = task.session
            lines.append(f"  {_session_words(sessions[current])}")
        if not task.step and (number == 1 or book.tasks[number - 2].step):
            lines.append("  Takes no time of its own")
        lines.append(_step(book, number, task))
    minutes = sum(task.person_minutes for task in book.tasks)
    lines.append(_row("", "", "", f"{minutes:,}", _money(book, book.spent_minor), ""))
    marks = [f"{CARE} take care: read Mind in the task list"] if any(task.cares for task in book.tasks) else []
    marks += ["2 two people, minutes each"] if any(task.people > 1 for task in book.tasks) else []
    marks += ["+ somebody helps at its start"] if any(task.helper for task in book.tasks) else []
    lines += [f"      {'   '.join(marks)}"] if marks else []
    if any(task.worth for task in book.tasks):
        lines.append("      worth: points that would come back without it, hazards counted in")
    return lines


def _session_words(row: SessionRow) -> str:
    on = f", {day(row.on)}" if row.on is not None else ""
    on += f" {clocks(row.start_minute, row.end_minute)}" if on and row.end_minute is not None else ""
    return f"Session {row.number}{on}: {hours_words(row.minutes_used)} of {hours_words(row.minutes_available)}"


def _step(book: PlanBook, number: int, task: Task) -> str:
    part = f" ({task.step} of {task.steps})" if task.steps > 1 else ""
    marks = (CARE if task.cares else " ") + (f"{task.people}" if task.people > 1 else "+" if task.helper else "")
    costs = (task.step <= 1 or task.cost_minor > 0) and not task.candidate.startswith("errand:")
    cost = _money(book, task.cost_minor) if costs else ""
    worth = f"{task.worth:,}" if task.worth else ""
    return _row(f"{number}", cut(task.name, NAME - len(part)) + part, marks, f"{task.minutes}", cost, worth)


WITHOUT_SHOP = {
    "tool": "tools",
    "hire": "hire",
    "remedy": "the remedies themselves",
    "labour": "pay",
    "fixed": "fixed costs",
}


def _buy(book: PlanBook) -> list[str]:
    if not book.money:
        return ["BUY   nothing: everything in this plan is free."]
    sums: dict[str, int] = {}
    for line in book.money:
        place = line.shop_name or WITHOUT_SHOP.get(line.kind, "other goods")
        sums[place] = sums.get(place, 0) + line.line_minor
    parts = [f"{place} {write_money(total, book.currency)}" for place, total in sorted(sums.items())]
    spent = write_money(book.spent_minor, book.currency)
    rest = ""
    if book.budget_minor is not None:
        rest = f", {write_money(book.budget_minor - book.held_back_minor - book.spent_minor, book.currency)} left"
    days = [f"{'MONEY ' if not at else '      '}{line}" for at, line in enumerate(money_day_lines(book))]
    return [*wrapped(f"BUY   {', '.join(parts)}: {spent} in all{rest}", 6), *days]


def _left_out(book: PlanBook) -> list[str]:
    useful = [row for row in book.left_out if row.would_add and row.would_add > 0][:LEFT_OUT_SHOWN]
    if not useful:
        return []
    lines = [line for row in useful for line in wrapped(f"      {row.name}: {row.would_add:,} points; {row.why}", 8)]
    return ["", "LEFT OUT", *lines]


def _proof(book: PlanBook) -> list[str]:
    means = []
    if book.budget_minor is not None:
        comes = COMES if book.purses else ""
        means.append(f"{write_money(book.budget_minor - book.held_back_minor, book.currency)} {book.currency}{comes}")
    if book.sessions is not None:
        means.append("these sessions")
    within = f" within {' and '.join(means)}" if means else ""
    if not book.proven:
        more = book.bound - book.improvement
        best = f"at most {count(more, 'point')} more exist" if more > 0 else "its points cannot be beaten"
        return [*wrapped(f"STOPPED after {book.seconds_limit:g} s, not proven: {best}.", 6), *_again(book)]
    said = f"PROOF no other set of these {book.candidates} remedies takes away more{within}."
    if book.sides:
        said = f"PROOF {fair_proof(within)}."
    if book.everything:
        sooner = "costs less" if book.sessions is None else "ends sooner, or as soon for less,"
        said = f"PROOF no other way to do everything {sooner}{within}."
    return [*wrapped(said, 6), *_again(book)]


def _again(book: PlanBook) -> list[str]:
    new = [row for row in book.faults if row.state == "new"]
    words = "nothing new" if not new else "new: " + ", ".join(f"{row.title} ({row.subject})" for row in new)
    worse = [f"{row.title} ({row.subject})" for row in book.faults if row.state == "worse"]
    words += f"; worse: {', '.join(worse)}" if worse else "; nothing worse" if not new else ""
    measured = any(not row.listed for row in book.faults)
    return wrapped(f"      The changed room was inspected again: {words}.", 6) if measured else []


def _three(book: PlanBook) -> list[str]:
    lines = [f"PLANS {left('best', 13)}{_sums(book, book.best)}"]
    if book.recommended is not None:
        lines.append(f"      {left('recommended', 13)}{_sums(book, book.recommended)}")
    if book.free is not None:
        lines.append(f"      {left('free', 13)}{_sums(book, book.free)}")
    return lines


def _sums(book: PlanBook, sums: Sums) -> str:
    hazards = f", hazards left {sums.hazards_after}" if book.hazards_before else ""
    spent, hours = _money(book, sums.spent_minor), hours_words(sums.minutes)
    return f"{spent:>9}  {sums.improvement:>6,} points  {hours}{hazards}"


def _both(book: PlanBook) -> list[str]:
    """What the fair plan is for each of two people."""
    lines = fair_lines(book)
    return [line for at, text in enumerate(lines) for line in wrapped(("      " if at else "BOTH  ") + text, 6)]


def _more(book: PlanBook) -> list[str]:
    lines = next_lines(book)
    return [line for at, text in enumerate(lines) for line in wrapped(("      " if at else "MORE  ") + text, 6)]


def _chances(book: PlanBook) -> list[str]:
    """How sure it is, and how quick the household is taken to be."""
    told = [*short_lines(book, SURE_SHOWN), *price_lines(book)]
    lines = [f"CHANCES  {text}" if at == 0 else f"      {text}" for at, text in enumerate(told)]
    lines += [f"PACE  {pace_line(book.paces)}"] if book.paces is not None and book.paces.learnt else []
    return [line for text in lines for line in wrapped(text, 6)]
