"""Clock times, and names of people as names of sheets and files."""

from __future__ import annotations

import io
import re
from dataclasses import replace
from datetime import datetime
from typing import Any

import pytest
from icalendar import Calendar, Todo
from openpyxl import load_workbook

from budgetfix.exports.by_person import file_names, sheet_names, times, who_words, with_words, workers_of
from budgetfix.exports.calendar import person_ics, plan_ics
from budgetfix.exports.page.page import plan_page
from budgetfix.exports.plan_book import plan_book
from budgetfix.exports.plan_book_people import COLUMNS, OPEN
from budgetfix.exports.plan_csv import do_csv
from budgetfix.outcome.book import PlanBook, SessionRow, Spell
from tests.exports.plan_sheets import headings, opened, rows, sheet_of
from tests.exports.sample_book import ACCENTS, BOOK, FORMULA, LONG, NO_HOURS, RTL, SESSIONS
from tests.exports.test_plan_csv import rows as records
from tests.exports.timed_book import ANN, BOTH, TIMED, UNDATED

NAMES = ("Ann", "ann", "", "Do", "History", "a/b:c", "[*?]", "'quoted'", LONG, LONG + "!", RTL, ACCENTS, FORMULA,
         "棚板 " * 20, "👩‍🔧" * 12, "Together", "x\ny", "..", "con", "Ann (2)", "Ann 2")  # fmt: skip


def test_times_are_those_of_the_clock_where_there_is_a_day() -> None:
    """A session from nine: `09:00-09:45`. Without a day minutes count from the start, and only where people share."""
    spells = (Spell(0, 10, BOTH), Spell(10, 45, ANN))
    assert times(SESSIONS[0], spells, False) == "09:00-09:45"
    assert times(SESSIONS[0], (Spell(0, 10, BOTH), Spell(20, 55, ANN)), True) == "09:00-09:10, 09:20-09:55"
    undated = SessionRow(1, None, 0, 60, 45)
    assert (times(undated, spells, True), times(undated, spells, False)) == ("+0:00-0:45", "")
    assert times(undated, (Spell(50, 125),), True) == "+0:50-2:05"
    assert times(None, spells, True) == times(SESSIONS[0], (), True) == ""


def test_a_helper_is_told_apart() -> None:
    """To people it stays one task: who does it, and who helps for how long."""
    rod = TIMED.tasks[4]
    assert who_words(rod) == "Ben; Ann helps for the first 10 min"
    assert (with_words(rod, "Ben"), with_words(rod, "Ann")) == ("Ann, the first 10 min", "Ben, the first 10 min")
    assert rod.person_minutes == 60
    assert who_words(TIMED.tasks[0]) == "Ann, Ben"


def test_sheet_names_are_what_a_spreadsheet_takes() -> None:
    """At most 31 UTF-16 letters, no brackets, slashes, colons, stars or apostrophes, and no two alike."""
    found = sheet_names(NAMES)
    assert len({name.casefold() for name in found}) == len(NAMES)
    for name in found:
        assert 0 < len(name.encode("utf-16-le")) // 2 <= 31
        assert not re.search(r"[\[\]:*?/\\'\x00-\x1f]", name)
        assert name.casefold() not in ("history", "do", "together", "buy", "summary")
    assert found[0] == "Ann"
    assert found[2] == "Person 3"
    assert found[10] == RTL[:31]


def test_file_names_are_safe_and_no_two_alike() -> None:
    """Letters and digits of any language; no dots, slashes or spaces, and nothing that differs in case alone."""
    found = file_names(NAMES)
    assert len({name.casefold() for name in found}) == len(NAMES)
    for name in found:
        assert re.fullmatch(r"plan-[\w-]+\.ics", name), name
        assert len(name.encode()) < 250
    assert found[:3] == ["plan-ann.ics", "plan-ann-2.ics", "plan-person-3.ics"]
    assert file_names(["adult 1", "adult 2"]) == ["plan-adult-1.ics", "plan-adult-2.ics"]


def test_one_person_has_no_lists_of_their_own() -> None:
    """Where one works alone, the list is theirs."""
    alone = replace(BOOK, tasks=tuple(task for task in BOOK.tasks if task.who == ANN))
    assert workers_of(alone) == []
    assert workers_of(BOOK) == ["Ann", "Ben"]
    assert opened(plan_book(alone)).sheetnames[2:4] == ["Do", "Before and after"]


def test_each_person_has_a_sheet_and_both_have_one() -> None:
    """Own tasks with the numbers of the sheet Do, when and with whom; a helper only for the minutes of helping."""
    book = plan_book(TIMED)
    assert opened(book).sheetnames[2:6] == ["Do", "Ann", "Ben", "Together"]
    ann, both = rows(sheet_of(TIMED, "Ann")), rows(sheet_of(TIMED, "Together"))
    assert set(headings(sheet_of(TIMED, "Ann"))) <= {column.heading for column in COLUMNS}
    assert [(row["No."], row["When"], row["Time"], row["Minutes"], row["With"]) for row in ann] == [
        (1, "Sat 6 Jun", "09:00-09:45", 45, "Ben"),
        (2, "Sat 6 Jun", "09:45-10:45", 60, None),
        (4, "Sat 6 Jun", "10:45-10:55", 10, None),
        (5, "Sun 7 Jun", "09:00-09:10", 10, "Ben, the first 10 min"),
        (6, "Sun 7 Jun", "09:10-09:30", 20, None),
        (7, "Sun 7 Jun", "09:30-09:35", 5, None),
    ]
    assert [(row["No."], row["Time"], row["With"]) for row in both] == [
        (1, "09:00-09:45", "Ann, Ben"),
        (5, "09:00-09:10", "Ben; Ann helps for the first 10 min"),
    ]
    assert ann[0]["Done"] == OPEN


def test_a_tick_on_do_is_the_only_truth() -> None:
    """The other sheets show it by a formula: a cell of the sheet Do each, in its row."""
    page = sheet_of(TIMED, "Ben", values=False)
    found = [row["Done"] for row in rows(page)]
    assert found == [f"=IF('Do'!$B${row}<>\"\",'Do'!$B${row},\"{OPEN}\")" for row in (5, 7, 9)]


@pytest.mark.parametrize("name", NAMES)
def test_any_name_gives_a_workbook(name: str) -> None:
    """Whatever somebody is called, the book opens and has a sheet of theirs."""
    tasks = tuple(replace(task, who=tuple(name if one == "Ben" else one for one in task.who)) for task in BOOK.tasks)
    rows_ = tuple(
        replace(row, who=tuple((name if one == "Ben" else one, there, used) for one, there, used in row.who))
        for row in SESSIONS
    )
    book = load_workbook(io.BytesIO(plan_book(replace(BOOK, tasks=tasks, sessions=rows_))))
    assert len(book.sheetnames) == (6 if name == "Ann" else 9)


def entries(data: bytes) -> list[Any]:
    """The entries of a calendar."""
    return list(Calendar.from_ical(data).subcomponents)


def test_a_calendar_for_each_lasts_as_long_as_they_work() -> None:
    """Ben is done at 10:10 on Saturday, Ann at 10:55; each with their own tasks, and entries of their own."""
    ann, ben, all_ = (entries(data) for data in (person_ics(TIMED, "Ann"), person_ics(TIMED, "Ben"), plan_ics(TIMED)))
    at = datetime.fromisoformat
    assert (ben[0]["dtstart"].dt, ben[0]["dtend"].dt) == (at("2026-06-06T09:00"), at("2026-06-06T10:10"))
    assert ann[0]["dtend"].dt == all_[0]["dtend"].dt == at("2026-06-06T10:55")
    assert ben[0]["summary"] == "Front room, session 1, Ben: 2 tasks"
    assert len({str(entry["uid"]) for entry in (*ann, *ben, *all_)}) == 6
    lines = str(ann[1]["description"]).split("\n")
    assert lines[2].startswith("5. Hang a longer rod, higher (2 of 2): 09:00-09:10; 10 min; with Ben, the first 10 min")
    assert "1. Lower the TV by 12 in: 09:00-09:45; 45 min; 1 h 15 min if it goes badly; 2 people; Ann, Ben" in str(
        all_[0]["description"]
    )


def test_undated_sessions_are_to_dos_with_minutes_from_the_start() -> None:
    """No day, no event: the minutes stand in the words."""
    first = entries(person_ics(UNDATED, "Ben"))[0]
    assert isinstance(first, Todo)
    assert "+0:45-1:10" in str(first["description"])
    assert not entries(person_ics(NO_HOURS, "Cem"))[0].get("dtstart")


def test_times_in_do_csv() -> None:
    """A column at the end; minutes from the start are text, not a formula."""
    assert [row["time"] for row in records(do_csv(TIMED))][:2] == ["09:00-09:45", "09:45-10:45"]
    assert records(do_csv(UNDATED))[0]["time"] == "'+0:00-0:45"
    assert records(do_csv(BOOK))[0]["time"] == ""
    assert records(do_csv(TIMED))[4]["who"] == "Ben; Ann helps for the first 10 min"


@pytest.mark.parametrize("book", [TIMED, UNDATED])
def test_the_page_shows_times_and_whose_list(book: PlanBook) -> None:
    """Beside the minutes stands when; buttons choose a person where there are several, and nobody for one."""
    page = plan_page(book).decode()
    first = "09:00-09:45" if book is TIMED else "+0:00-0:45"
    assert f'<span class="time">{first}</span>45 min' in page
    assert [name in page for name in ('data-whose="Ann"', 'data-whose="Ben"', "data-together")] == [True] * 3
    assert 'data-who="Ann\nBen"' in page
    alone = replace(book, tasks=tuple(task for task in book.tasks if task.who == ANN))
    assert 'class="control people"' not in plan_page(alone).decode()
