"""Rooms that are never left half done: `whole_days: [bedroom]`, or `all`."""

from __future__ import annotations

from budgetfix.base.problems import FileProblem
from budgetfix.brief.models import Brief
from budgetfix.brief.whole_days import WholeDays
from budgetfix.intake.inside import named_place
from budgetfix.intake.raw_rows import RawRow, close_to
from budgetfix.intake.reader import as_names
from budgetfix.room.survey import Survey

WANTED_DAYS = "rooms such as [bedroom], or all"


def read_days(value: object) -> WholeDays:
    """Names of rooms, or `all`. Errors: ValueError."""
    names = as_names(value)
    if not names:
        raise ValueError("name a room, or leave it out")
    return WholeDays(everywhere=True) if names == ("all",) else WholeDays(rooms=names)


def check_days(row: RawRow, brief: Brief, survey: Survey | None, problems: list[FileProblem]) -> None:
    """Note every room that the survey does not have; without a survey there are none to name."""
    known = [facts.room for facts in survey.rooms] if survey is not None else []
    rooms = brief.whole_days.rooms if brief.whole_days is not None else ()
    wanted = "a room of the survey, or all" if survey is not None else "all: without a survey no room has a name"
    problems += [
        FileProblem(named_place(row, "whole_days", name), f"'{name}'", wanted, close_to(name, known))
        for name in rooms
        if name not in known
    ]
