"""One figure of a survey put to another value, and whether a room can be like that."""

from __future__ import annotations

from budgetfix.room.overlaps import overlaps
from budgetfix.room.survey import Change, RoomFacts, Survey, Table

GIVE_MM = 5.0
"""The tape's give (common practice)."""


def sort_of(survey: Survey, item: str, field: str) -> tuple[Table | None, str, str]:
    """(table, sort, room) of a figure; no table for one of a room itself. Errors: KeyError for an unknown thing."""
    if field in RoomFacts.model_fields and any(facts.room == item for facts in survey.rooms):
        return None, "", item
    table, thing = survey.named[item]
    return table, str(getattr(thing, "what", "")), thing.room


def refigured(survey: Survey, item: str, field: str, value: float) -> Survey:
    """The survey with this figure instead. Errors: KeyError for an unknown thing."""
    table, _, _ = sort_of(survey, item, field)
    if table is not None:
        return survey.changed((Change(table, item, ((field, value),)),))
    rooms = tuple(
        RoomFacts.model_validate({**dict(facts), field: value}) if facts.room == item else facts
        for facts in survey.rooms
    )
    kept = {name: getattr(survey, name) for name in Survey.model_fields}
    return Survey.model_validate({**kept, "rooms": rooms})


def stands(survey: Survey, room: str, before: Survey) -> bool:
    """True where nothing is taller than the room or its own top, and no two things share a spot that did not before."""
    ceiling = survey.facts(room).ceiling + GIVE_MM
    pieces = [one for one in survey.furniture if one.room == room]
    tops = [one.top for one in survey.openings if one.room == room]
    tops += [one.rod_height for one in survey.curtains if one.room == room]
    tops += [one.height for one in pieces]
    tops += [one.bottom + one.height for one in survey.pictures if one.room == room]
    upright = all((part or 0) <= one.height + GIVE_MM for one in pieces for part in (one.seat, one.arm))
    low = all(one.bottom < one.top for one in survey.openings if one.room == room)
    if max(tops, default=0) > ceiling or not upright or not low:
        return False
    return set(overlaps(survey, room)) <= set(overlaps(before, room))
