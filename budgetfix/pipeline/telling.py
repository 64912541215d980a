"""How far the chooser is, in a line for people."""

from __future__ import annotations

from collections.abc import Callable

from budgetfix.base.money import write_money
from budgetfix.brief.models import Brief
from budgetfix.optimize.problem import Report, Round

SETTLING = {
    "marks": "Leaving least in the walls",
    "minutes": "Settling ties: least work",
    "last": "Settling ties: earliest finish",
    "ids": "Settling ties: is there another plan as good?",
    "order": "Putting the steps in order",
    "clash": "No plan fits: which wishes clash?",
}


def telling(report: Callable[[str], None] | None, brief: Brief, points: int) -> Report | None:
    """A report for the chooser that speaks in points taken away and in money; `points`: all there are before."""
    if report is None:
        return None
    say = report

    def told(one: Round) -> None:
        say(words(one, brief, points))

    return told


def words(one: Round, brief: Brief, points: int) -> str:
    """One line, at most 70 characters."""
    number = f", round {one.number}" if one.number else ""
    if one.phase in ("points", "both"):
        gone = "no plan yet" if one.best is None else f"{points - one.best:,} points gone"
        most = f", at most {points - one.floor:,} can be" if one.floor is not None else ""
        return f"Choosing: {gone}{most}{number}"
    if one.phase == "hazards":
        best = "no plan yet" if one.best is None else f"{one.best:,} hazard points left"
        least = f", at least {one.floor:,} stay" if one.floor else ""
        return f"Choosing: {best}{least}{number}"
    if one.phase == "spend":
        best = "no plan yet" if one.best is None else write_money(one.best, brief.currency)
        least = f", at least {write_money(one.floor, brief.currency)}" if one.floor is not None else ""
        return f"The same for less: {best}{least}{number}"
    if one.phase in ("first voice", "second voice", "fair"):
        return f"Between two people: what is fair{number}"
    if one.phase == "curve":
        return f"Other sums of money: {one.best} plans, open gaps between them: {one.floor}"
    if one.phase == "why_not":
        return f"Why not the others: {one.best} of {one.floor}"
    if one.phase == "ceilings":
        return f"How dear goods may get, and what else would do: {one.best} of {one.floor}"
    return SETTLING[one.phase] + number
