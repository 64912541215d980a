"""Rows, record and stray ticks of a plan's workbook, each read by itself."""

from __future__ import annotations

from budgetfix.exports.plan_book import plan_book
from budgetfix.intake.plan_astray import astray
from budgetfix.intake.plan_record import read_record
from budgetfix.intake.plan_rows import columns_of, key, listed
from budgetfix.intake.survey_xlsx import Book, open_book
from budgetfix.outcome.so_far import StepBack
from tests.exports.remembered_book import KEPT
from tests.intake.ticked import HEAD, Desk


def book(data: bytes) -> Book:
    """A workbook opened for its values and its formulas."""
    shown, typed = open_book(data, True), open_book(data, False)
    assert shown is not None
    assert typed is not None
    return Book("plan.xlsx", shown, typed)


def test_rows_know_their_ids_names_and_cells() -> None:
    """Every line has its id and its name; sums below have neither, and are no rows of ours."""
    desk = Desk()
    desk.type("Buy", "product:rod@harrow", "Paid in all", 40)
    rows, problems = listed(book(desk.saved()), "Buy")
    assert problems == ()
    assert (rows[0].id, rows[0].name, rows[0].ours) == ("product:rod@harrow", "Extending rod 66-120 in", True)
    paid = rows[0].cells["paid in all"]
    assert paid is not None
    assert (paid.value, paid.place.label) == (40, f"Buy!P{HEAD + 1}")
    assert rows[0].cells["bought"] is None
    assert [row.id for row in rows if row.id] == [one.id for one in KEPT.remembered.lines] if KEPT.remembered else False
    assert key("  a  b\n") == "a b"
    assert key(None) == ""


def test_a_heading_is_found_wherever_it_stands() -> None:
    """By its words, whatever their letters and spaces."""
    page = Desk().page("Do")
    page.cell(HEAD, 30).value = " DONE "
    assert columns_of(page, HEAD, "done") == [2, 30]


def test_the_record_is_read_alone() -> None:
    """A fresh book remembers its plan, whatever stands on its other sheets."""
    assert read_record(book(plan_book(KEPT))) == (KEPT.remembered, ())


def test_a_stray_tick_is_one_that_do_does_not_have() -> None:
    """A typed tick on a person's sheet counts only where Do has none; a copy of Do is nobody's sheet."""
    assert KEPT.remembered is not None
    desk = Desk()
    desk.type("Ann", "rod#1", "Done", "x")
    desk.book.copy_worksheet(desk.page("Do"))
    found = book(desk.saved())
    steps = [StepBack(one) for one in KEPT.remembered.steps]
    assert [problem.place.label for problem in astray(found, steps)] == ["Ann!B7"]
    assert astray(found, [StepBack(one.planned, True) for one in steps]) == []
