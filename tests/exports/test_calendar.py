from __future__ import annotations

import re
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from typing import Any

import pytest
from icalendar import Calendar, Event, Todo

from budgetfix.exports.calendar import clock_minutes, plan_ics
from budgetfix.outcome.book import PlanBook, SessionRow
from tests.exports.sample_book import (
    ACCENTS,
    BOOK,
    FORMULA,
    FREE_HANDS,
    LONG,
    LONG_TEXT,
    NO_HOURS,
    NOTHING,
    RTL,
    SESSIONS,
    TASKS,
    many,
)  # fmt: skip

UNDATED = replace(BOOK, sessions=tuple(replace(row, on=None, start_minute=0) for row in SESSIONS))
HALF = replace(BOOK, sessions=(SESSIONS[0], replace(SESSIONS[1], on=None, start_minute=0)))
ALL = (BOOK, UNDATED, HALF, NO_HOURS, NOTHING, FREE_HANDS, LONG_TEXT, many(12), many(100))


def entries(book: PlanBook) -> list[Any]:
    """The events and tasks of a calendar, read back."""
    return list(Calendar.from_ical(plan_ics(book)).subcomponents)


def text_of(entry: Any) -> str:
    """The description, its lines unfolded and unescaped."""
    return str(entry["description"])


@pytest.mark.parametrize("book", ALL)
def test_lines_end_in_crlf_and_are_folded_at_75_octets(book: PlanBook) -> None:
    """RFC 5545 section 3.1: lines end in CRLF and should not be longer than 75 octets without it; UTF-8 letters
    are whole on each line.
    """
    data = plan_ics(book)
    assert data.endswith(b"END:VCALENDAR\r\n")
    assert not re.search(rb"(?<!\r)\n|\r(?!\n)", data)
    for line in data.split(b"\r\n"):
        assert len(line) <= 75
        line.decode("utf-8")


@pytest.mark.parametrize("book", ALL)
def test_a_calendar_is_whole(book: PlanBook) -> None:
    """RFC 5545 sections 3.6 and 3.7: version 2.0, a maker, and one component at least."""
    made = Calendar.from_ical(plan_ics(book))
    assert (made["version"], bool(made["prodid"])) == ("2.0", True)
    assert len(made.subcomponents) >= 1
    assert not made.errors


@pytest.mark.parametrize("book", ALL)
def test_each_entry_has_its_own_name_and_a_time_stamp_in_utc(book: PlanBook) -> None:
    """RFC 5545 sections 3.8.4.7 and 3.8.7.2: a UID used once, a DTSTAMP in UTC; that is the day of ordering."""
    found = entries(book)
    assert len({str(entry["uid"]) for entry in found}) == len(found)
    for entry in found:
        assert entry["dtstamp"].dt == datetime(2026, 6, 1, tzinfo=UTC)


def test_a_session_begins_in_floating_time_and_lasts_as_long_as_the_busiest_person() -> None:
    """RFC 5545 section 3.3.5, form 1: no time zone. Ann works 130 minutes while Ben works 85: it is over at 11:10."""
    first, second = entries(BOOK)
    assert (first.name, first["dtstart"].dt, first["dtend"].dt) == (
        "VEVENT",
        datetime.fromisoformat("2026-06-06T09:00"),
        datetime.fromisoformat("2026-06-06T11:10"),
    )
    assert b"DTSTART:20260606T090000\r\n" in plan_ics(BOOK)
    assert second["dtend"].dt - second["dtstart"].dt == timedelta(minutes=65)
    assert clock_minutes(SessionRow(1, None, 0, 60, 45)) == 45


def test_a_session_over_midnight_ends_on_the_next_day() -> None:
    """A night shift from half past eleven."""
    late = replace(BOOK, sessions=(replace(SESSIONS[0], start_minute=23 * 60 + 30), SESSIONS[1]))
    assert entries(late)[0]["dtend"].dt == datetime.fromisoformat("2026-06-07T01:40")


def test_work_that_takes_no_time_has_no_end() -> None:
    """RFC 5545 section 3.8.2.2: an end must be later than the start; without one the event takes no time."""
    task = replace(TASKS[0], minutes=0, low=0, likely=0, high=0)
    row = replace(SESSIONS[0], minutes_used=0, who=(("Ann", 180, 0), ("Ben", 180, 0)))
    (entry,) = entries(replace(BOOK, tasks=(task,), sessions=(row,)))
    assert "dtstart" in entry
    assert "dtend" not in entry


def test_what_has_no_day_is_a_task_without_one() -> None:
    """RFC 5545 section 3.6.2: a to-do needs no date. Sessions without work have no entry at all."""
    assert [type(entry) for entry in entries(UNDATED)] == [Todo, Todo]
    assert [type(entry) for entry in entries(HALF)] == [Event, Todo]
    assert [type(entry) for entry in entries(NO_HOURS)] == [Todo]
    assert not any({"dtstart", "due"} & {name.lower() for name in entry} for entry in entries(UNDATED))
    idle = replace(BOOK, sessions=(*SESSIONS, SessionRow(3, date(2026, 6, 8), 540, 60, 0)))
    assert len(entries(idle)) == 2


def test_nothing_to_do_is_said() -> None:
    """A file without entries would be refused by readers."""
    (entry,) = entries(NOTHING)
    assert (entry["summary"], entry["status"]) == ("Front room: nothing to do", "COMPLETED")


def test_the_summary_counts_and_the_description_tells_all_in_order() -> None:
    """Tasks by their numbers on the sheet Do, then what to bring, tools and cautions, each once."""
    first = entries(BOOK)[0]
    assert first["summary"] == "Front room, session 1: 4 tasks"
    lines = text_of(first).split("\n")
    assert lines[:2] == ["Planned: 2 h 10 min of 3 h.", "Ann 2 h 10 min of 3 h; Ben 1 h 25 min of 3 h."]
    assert "2. Lower the TV by 12 in: 45 min; 1 h 15 min if it goes badly; 2 people; Ann, Ben" in lines
    assert "   Done when the middle of the glass is 42 1/2 in up" in lines
    bring, tools, mind = (lines.index(head) for head in ("Bring", "Tools", "Mind"))
    assert lines[bring + 1 : tools - 1] == [
        "- Extending rod 66-120 in (bag B)", "- Furniture anchor, set of 2 (bag A)", "- Hire: cordless drill",
    ]  # fmt: skip
    assert lines[tools + 1 : mind - 1] == ["- drill", "- pencil", "- spirit level", "- tape"]
    assert lines[mind + 1 :] == [
        "- Mind wires and pipes before you drill.", "- Two people lift.", "- Tall furniture tips: fix it to a stud.",
    ]  # fmt: skip
    second = text_of(entries(BOOK)[1])
    assert "- 2 × LED bulb 1100 lm (bag " in second
    assert second.split("\n")[3].startswith("5. Hang a longer rod, higher (2 of 2): 50 min")


def test_goods_are_named_with_their_bag() -> None:
    """The goods of one task stand in one bag."""
    money = (replace(BOOK.money[0], bag="Q"), *BOOK.money[1:])
    assert "- Extending rod 66-120 in (bag Q)" in text_of(entries(replace(BOOK, money=money))[0])


def test_names_from_all_the_world_come_back_as_typed() -> None:
    """RFC 5545 section 3.3.11: commas, semicolons, backslashes and line breaks are escaped and come back."""
    for name in (LONG, RTL, ACCENTS, FORMULA, "a, b; c\\d: \\n e", '"quoted"'):
        (entry, *_) = entries(replace(BOOK, title=name, tasks=(replace(TASKS[0], text=f"one\n{name}"), *TASKS[1:])))
        assert entry["summary"] == f"{name}, session 1: 4 tasks"
        assert f"   one\n{name}\n" in text_of(entry)


def test_control_letters_are_left_out() -> None:
    """RFC 5545 section 3.3.11: text holds no control letters; a carriage return is a line break."""
    data = plan_ics(replace(BOOK, title="a\x07b\x00c", tasks=(replace(TASKS[0], text="x\r\ny\tz"),)))
    assert not re.search(rb"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f]", data)
    assert "x\ny z" in str(Calendar.from_ical(data).subcomponents[0]["description"])


def test_the_same_book_gives_the_same_bytes_and_a_new_plan_keeps_the_entries() -> None:
    """Without a day of ordering the time stamp is a fixed one; a changed session replaces its entry by its UID."""
    assert plan_ics(BOOK) == plan_ics(BOOK)
    assert entries(replace(BOOK, ordered=None))[0]["dtstamp"].dt == datetime(2000, 1, 1, tzinfo=UTC)
    anew = replace(BOOK, tasks=TASKS[1:])
    assert entries(anew)[0]["uid"] == entries(BOOK)[0]["uid"]
    assert entries(anew)[0]["uid"] != entries(replace(BOOK, title="Back room"))[0]["uid"]
