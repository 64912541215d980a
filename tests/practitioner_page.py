"""Writes `reports/practitioner.md`: what a practitioner chooses in each demo job beside what the tool plans."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path

from budgetfix.outcome.check import Checked
from tests.practitioner import CHOICES, Difference, Figures, differences, judged, money, names, planned_figures, walked
from tests.scenarios import SCENARIOS, job, run

PAGE = Path(__file__).resolve().parent.parent / "reports" / "practitioner.md"
HEAD = """# The plan beside a practitioner's choice

Three demo jobs, each planned at its own budget, beside what someone of the trade would take (common practice; the
lists stand in `tests/practitioner.py`). Both are judged alike: all changes made, every room inspected again, the bill
taken off again. The order of wishes is hazard points, then points; less is better. `make reports` writes this page,
the gate holds it fresh.
"""

WHY: Mapping[str, str] = {
    "m09>m08": "Open, the wide pair pushes together to 440 mm, and with 250 mm of rod beside the frame part of it "
    "stays before the glass; the narrower pair is nearly full enough for this rod and clears the glass.",
    "t01>": "Where a room is shown for sale no rule judges where a screen hangs, so taking it down brings no points, "
    "and here a minute is money. Who wants it down names t01 in `must`, or types the screen in as a listed fault.",
    "t11>t12": "Carried out or strapped, the cabinet cannot tip any more; the strap takes one person and fewer "
    "minutes. That it is full of the seller's things is not in the survey: a count of `things` on it would say so.",
    "n02>pendant-cord/pendant": "The cord let down brings it to the same height without a new shade.",
}
"""What the figures do not say: the practitioner's side > the plan's side."""


def page() -> str:
    """The whole page."""
    return HEAD + "\n" + "".join(section(name) for name in SCENARIOS)


def section(name: str) -> str:
    """What the page says about one job."""
    return "".join(f"{line}\n" for line in _lines(name))


def _lines(name: str) -> Iterator[str]:
    mine, plan, before = judged(name, CHOICES[name]), planned_figures(name), run(name).before
    budget = job(name).brief.budget_minor
    yield f"## {name.capitalize()}"
    yield ""
    yield f"Budget {money(name, budget or 0)} {job(name).brief.currency}."
    yield f"Found before: {before.hazard_points:,} hazard points and {before.points:,} points."
    yield ""
    yield "| | the practitioner | the plan |"
    yield "| --- | ---: | ---: |"
    yield f"| hazard points left | {mine.hazard_points:,} | {plan.hazard_points:,} |"
    yield f"| points left | {mine.points:,} | {plan.points:,} |"
    yield f"| spent | {money(name, mine.spent_minor)} | {money(name, plan.spent_minor)} |"
    yield f"| person-minutes | {mine.minutes:,} | {plan.minutes:,} |"
    yield f"| remedies | {len(CHOICES[name])} | {len(run(name).ids)} |"
    yield ""
    yield _fits(name)
    yield ""
    yield from _sets(name)
    yield from _left(mine, plan)


def _fits(name: str) -> str:
    if isinstance(walked(name), Checked):
        return (
            "The practitioner's choice fits the hours, the money and the floor; it is a plan the tool could have made."
        )
    return "The practitioner's choice does not fit the hours, the money or the guard as the tool counts them."


def _sets(name: str) -> Iterator[str]:
    both = [id for id in CHOICES[name] if id in run(name).ids]
    yield f"Both take {len(both)} remedies: {', '.join(both)}."
    yield ""
    found = differences(name)
    yield "Where they differ:" if found else "They do not differ."
    yield ""
    yield from (f"- {_told(name, one)}" for one in found)
    yield ""


def _told(name: str, one: Difference) -> str:
    key = f"{' '.join(one.theirs)}>{' '.join(one.plans)}"
    words = _swap(name, one)
    if one.figures is not None:
        words += f" Made alone, this difference means: {_change(name, one.figures)}."
    return f"{words} {WHY[key]}" if key in WHY else words


def _swap(name: str, one: Difference) -> str:
    if not one.plans:
        return f"The plan leaves out: {names(name, one.theirs)}."
    if not one.theirs:
        return f"The plan adds: {names(name, one.plans)}."
    return f"Instead of: {names(name, one.theirs)}, the plan takes: {names(name, one.plans)}."


def _change(name: str, after: Figures) -> str:
    mine = judged(name, CHOICES[name])
    parts = [
        _more(after.hazard_points - mine.hazard_points, "hazard points"),
        _more(after.points - mine.points, "points left"),
        f"money {_sign(after.spent_minor - mine.spent_minor)}{money(name, abs(after.spent_minor - mine.spent_minor))}",
        _more(after.minutes - mine.minutes, "minutes"),
    ]
    return ", ".join(parts)


def _sign(amount: int) -> str:
    return "-" if amount < 0 else "+"


def _more(amount: int, what: str) -> str:
    return f"{what} {amount:+,}" if amount else f"{what} as before"


def _left(mine: Figures, plan: Figures) -> Iterator[str]:
    faults = sorted(
        {*mine.faults, *plan.faults}, key=lambda one: (-max(mine.faults.get(one, 0), plan.faults.get(one, 0)), one)
    )
    yield "| what is left | the practitioner | the plan |"
    yield "| --- | ---: | ---: |"
    for fault in faults:
        yield f"| {fault} | {mine.faults.get(fault, 0):,} | {plan.faults.get(fault, 0):,} |"
    yield ""


if __name__ == "__main__":
    PAGE.write_text(page(), encoding="utf-8")
    print("Wrote reports/practitioner.md")
