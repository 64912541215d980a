from __future__ import annotations

import csv
import io
import re
from dataclasses import replace
from fractions import Fraction

import pytest

from budgetfix.exports.plan_csv import buy_csv, do_csv, harmless
from budgetfix.outcome.book import MoneyLine
from tests.exports.sample_book import BOOK, FORMULA, MONEY, NO_HOURS, NOTHING, TASKS, many


def rows(data: bytes) -> list[dict[str, str]]:
    """The records of a table by heading."""
    return list(csv.DictReader(io.StringIO(data.decode("utf-8"), newline="")))


@pytest.mark.parametrize("data", [buy_csv(BOOK), do_csv(BOOK), buy_csv(many(12)), do_csv(NO_HOURS), buy_csv(NOTHING)])
def test_every_record_ends_in_crlf_and_has_the_same_fields(data: bytes) -> None:
    """RFC 4180 section 2 (F6): CRLF after each record, one field count, nothing after the last."""
    text = data.decode("utf-8")
    assert text.endswith("\r\n")
    assert not re.search(r"(?<!\r)\n|\r(?!\n)", text)
    assert len({len(record) for record in csv.reader(io.StringIO(text, newline=""))}) == 1


def test_an_inch_mark_is_doubled_inside_quotes() -> None:
    """RFC 4180 section 2 (F6): 24" rod is written as "24"" rod"."""
    line = replace(MONEY[0], name='24" rod')
    assert b',"24"" rod",' in buy_csv(replace(BOOK, money=(line,)))


def test_a_line_break_in_a_name_stays_in_its_field() -> None:
    """RFC 4180 section 2 (F6): a field with a line break is quoted."""
    line = replace(MONEY[0], name="rod\r\nwith rings, two")
    assert rows(buy_csv(replace(BOOK, money=(line,))))[0]["name"] == "rod\r\nwith rings, two"


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t", "\r"])
def test_no_text_is_taken_for_a_formula(start: str) -> None:
    """OWASP, CSV injection (F8): a single quote is put before each start that a spreadsheet would run."""
    assert harmless(f"{start}1+1") == f"'{start}1+1"
    assert harmless(f"rod {start}1") == f"rod {start}1"


def test_every_text_column_is_made_harmless() -> None:
    """F8 holds for names, labels, shops, tools and people alike."""
    bad = MoneyLine("product", FORMULA, FORMULA, FORMULA, FORMULA, 1, 100, 100, FORMULA, FORMULA, FORMULA, (FORMULA,))
    task = replace(
        TASKS[0], name=FORMULA, text=FORMULA, who=(FORMULA,), tools=(FORMULA,), cares=(FORMULA,), done_when=FORMULA
    )
    book = replace(BOOK, money=(bad,), tasks=(task,))
    for data in (buy_csv(book), do_csv(book)):
        cells = [cell for record in csv.reader(io.StringIO(data.decode(), newline="")) for cell in record]
        assert [cell for cell in cells if cell.startswith("=")] == []
        assert f"'{FORMULA}" in cells


def test_amounts_are_plain_numbers_and_add_up() -> None:
    """Money has a point and no sign or thousands, also where a currency has no digits (ISO 4217, JPY)."""
    for book, shown in ((BOOK, "141.72"), (many(100, "JPY"), f"{many(100).spent_minor}")):
        table = rows(buy_csv(book))
        assert table[-1]["line"] == shown
        assert sum(Fraction(row["line"]) for row in table[:-1]) == Fraction(shown)


def test_what_the_shop_needs_stands_in_the_twin() -> None:
    """Bag, second choice, what to take along, the most to pay, the last day as a date (ISO 8601), and what to mind."""
    first, second, third, fourth = rows(buy_csv(BOOK))[:4]
    assert (first["bag"], first["second choice"], first["most to pay"], first["return by"]) == (
        "B", "Two rods and a joint", "47.28", "2026-07-04",
    )  # fmt: skip
    assert first["take along"] == "window: frame 72 in wide, rod 90 in up"
    assert second["most to pay"] == "any price"
    assert (third["return by"], third["mind"]) == ("no returns", MONEY[2].mind)
    assert (fourth["most to pay"], fourth["return by"]) == ("", "")
    assert [row["bag"] for row in rows(do_csv(BOOK))] == ["", "", "A", "B", "", "C", "D"]


def test_a_rebate_stays_a_number() -> None:
    """F8: a negative number is written as a number, without a quote."""
    line = replace(MONEY[0], packs=None, unit_price_minor=None, line_minor=-250)
    assert rows(buy_csv(replace(BOOK, money=(line,))))[0]["line"] == "-2.50"


def test_steps_keep_their_order_and_dates() -> None:
    """The task list has one row a step, with the session's date; without a list of hours both are empty."""
    table = rows(do_csv(BOOK))
    assert [row["task"] for row in table] == [task.name for task in TASKS]
    assert (table[1]["session"], table[1]["date"], table[1]["minutes"], table[1]["minutes high"]) == (
        "1",
        "2026-06-06",
        "45",
        "75",
    )
    assert table[4]["part"] == "2 of 2"
    assert [row["leaves in the wall"] for row in table[:4]] == ["", "", "plugs", ""]
    assert {(row["session"], row["date"]) for row in rows(do_csv(NO_HOURS))} == {("", "")}
