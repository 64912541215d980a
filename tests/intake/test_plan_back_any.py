"""Any ticks come back as they were typed; and whatever is done to a workbook, it is read or refused in words."""

from __future__ import annotations

import random
from datetime import date, time, timedelta

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from budgetfix.exports.plan_book import plan_book
from budgetfix.intake.plan_back import back_from
from budgetfix.outcome.money_lines import NOT_BOUGHT
from budgetfix.outcome.so_far import SoFar
from tests.exports.remembered_book import KEPT, rest_of
from tests.intake.ticked import HEAD, Desk, said

pytestmark = pytest.mark.filterwarnings("ignore:Unknown extension", "ignore:Conditional Formatting extension")
assert KEPT.remembered is not None
LINES = {one.id: one.line.kind not in NOT_BOUGHT for one in KEPT.remembered.lines}
"""By id: whether it can be brought home."""
STEPS = tuple(one.id for one in KEPT.remembered.steps)
FRESH = plan_book(KEPT)
RELAXED = settings(max_examples=8, deadline=None, suppress_health_check=list(HealthCheck))
STATES: dict[object, str | None] = {
    "✓": "bought",
    "x": "bought",
    1: "bought",
    "returned": "returned",
    "Sold out": "sold out",
    None: None,
}
NO_GOODS = ("✓", "x", None)


def typed_line(goods: bool) -> st.SearchStrategy[tuple[object, int | None]]:
    """What somebody types into a line: a word or nothing, a sum in cents or nothing."""
    return st.tuples(st.sampled_from(list(STATES if goods else NO_GOODS)), st.none() | st.integers(0, 10**7))


LINES_TYPED = st.fixed_dictionaries({id: typed_line(goods) for id, goods in LINES.items()})
STEPS_TYPED = st.fixed_dictionaries(
    {id: st.tuples(st.sampled_from(["✓", "ok", True, None]), st.none() | st.integers(0, 1439)) for id in STEPS}
)


def typed_into(
    desk: Desk, lines: dict[str, tuple[object, int | None]], steps: dict[str, tuple[object, int | None]]
) -> None:
    """Type it all."""
    for id, (word, minor) in lines.items():
        desk.type("Buy", id, "Bought", word)
        desk.type("Buy", id, "Paid in all", None if minor is None else minor / 100)
    for id, (tick, minutes) in steps.items():
        desk.type("Do", id, "Done", tick)
        desk.type("Do", id, "Real minutes", minutes)


@RELAXED
@given(LINES_TYPED, STEPS_TYPED)
def test_any_ticks_come_back(
    lines: dict[str, tuple[object, int | None]], steps: dict[str, tuple[object, int | None]]
) -> None:
    """Whatever is ticked and typed is read as that, of every row; the book of the rest carries it on."""
    desk = Desk(data=FRESH)
    typed_into(desk, lines, steps)
    wanted: dict[str, tuple[object, object]] = {
        id: (STATES[word], minor) for id, (word, minor) in lines.items() if word is not None or minor is not None
    }
    wanted |= {
        id: (bool(tick), minutes) for id, (tick, minutes) in steps.items() if tick is not None or minutes is not None
    }
    found = desk.back()
    assert KEPT.remembered is not None
    for line in KEPT.remembered.lines:
        if not LINES[line.id] and wanted.get(line.id) == ("bought", None):
            wanted[line.id] = ("bought", line.line.line_minor)
    assert said(found) == wanted
    data = plan_book(rest_of(found))
    again = Desk(data=data).back()
    assert said(again) == wanted
    assert plan_book(rest_of(again)) == data


VALUES = (
    None, "", " ", "✓", "returned", "sold out", "x", 0, 1, -1, 43.5, 1e300, "43,50", "1.200", "nan", "=1+1", "=1/0",
    "#REF!", True, False, date(2026, 6, 1), time(0, 45), timedelta(hours=30), "id", "Bought", "Done", "Real minutes",
    "x" * 32_000, "{}", "[" * 3000, "version", "line", "product:rod@harrow", "rod#1", "\u202etext", "_x0041_",
)  # fmt: skip
TITLES = ("Buy", "Do", "Record", "Ann", "Summary")


def spoilt(desk: Desk, chance: random.Random) -> None:
    """One thing that somebody, or a program, does to a workbook."""
    page = desk.page(chance.choice([title for title in TITLES if title in desk.book.sheetnames]))
    row, at = chance.randint(1, min(page.max_row, 20)), chance.randint(1, min(page.max_column, 18))
    match chance.randrange(9):
        case 0:
            page.delete_rows(row, chance.randint(1, 3))
        case 1:
            page.delete_cols(at)
        case 2:
            page.insert_rows(row, chance.randint(1, 12))
        case 3:
            page.insert_cols(at)
        case 4:
            other = page.cell(chance.randint(1, 20), chance.randint(1, 18))
            page.cell(row, at).value, other.value = other.value, page.cell(row, at).value
        case 5 if len(desk.book.sheetnames) > 1:
            desk.book.remove(page)
        case 6:
            page.title = chance.choice(("buy", "Do", "Record", "Notes", "DO "))
        case 7:
            for column in range(1, 19):
                page.cell(row, column).value = page.cell(chance.randint(HEAD, 12), column).value
        case _:
            page.cell(row, at).value = chance.choice(VALUES)


@settings(max_examples=30, deadline=None, suppress_health_check=list(HealthCheck))
@given(st.integers(0, 2**32), st.integers(1, 8))
def test_whatever_becomes_of_a_workbook_it_is_read_or_refused(seed: int, times: int) -> None:
    """Rows, columns and sheets taken away, put in, swapped, called otherwise; cells with anything in them."""
    desk, chance = Desk(data=FRESH), random.Random(seed)
    for _ in range(times):
        spoilt(desk, chance)
    found, problems = back_from(desk.saved(), "plan.xlsx", "EUR")
    assert (found is None) == bool(problems)
    assert found is None or isinstance(found, SoFar)
    for problem in problems:
        assert str(problem).startswith("plan.xlsx ")
        assert len(str(problem)) < 600


@settings(max_examples=60, deadline=None)
@given(st.integers(0, len(FRESH) - 1), st.binary(min_size=1, max_size=40), st.booleans())
def test_a_damaged_file_is_read_or_refused(at: int, noise: bytes, cut: bool) -> None:
    """Bytes written over somewhere in the file, or all after them lost."""
    data = FRESH[:at] + noise + (b"" if cut else FRESH[at + len(noise) :])
    found, problems = back_from(data, "plan.xlsx", "EUR")
    assert (found is None) == bool(problems)
