"""The survey form and the room's records say the same."""

from __future__ import annotations

import typing

import pytest
from pydantic import BaseModel

from budgetfix.brief.models import ListedFault
from budgetfix.forms.survey_form import FORM_OF, HOME, SCREEN_HEIGHT, SCREEN_WIDTH, SHEETS
from budgetfix.room.items import ITEM_OF
from budgetfix.room.survey import Household, RoomFacts, Wall

RECORDS: dict[str, type[BaseModel]] = {"rooms": RoomFacts, "walls": Wall, "faults": ListedFault}
RECORDS.update({str(table): record for table, record in ITEM_OF.items()})


@pytest.mark.parametrize("table", sorted(RECORDS))
def test_every_field_has_a_column(table: str) -> None:
    """No field of a thing is without a column, and no column without a field (but those that only help).

    What is left of a listed fault is worked out from what is done, and never typed.
    """
    columns = {column.field for column in FORM_OF[table] if column.model}
    spare = {"sockets": {"width"}, "faults": {"left"}}.get(table, set())
    assert columns == set(RECORDS[table].model_fields) - spare


def test_the_home_is_asked_for() -> None:
    """Every fact of the household is on the first sheet."""
    assert {column.field for column in HOME} == set(Household.model_fields)


@pytest.mark.parametrize("table", sorted(RECORDS))
def test_choices_are_the_records_own(table: str) -> None:
    """A drop-down offers exactly what its record takes; marks on walls have a sheet of their own beside pictures."""
    for column in FORM_OF[table]:
        if column.kind == "choice":
            taken = typing.get_args(RECORDS[table].model_fields[column.field].annotation)
            apart = {"mark"} if table == "pictures" else set()
            assert column.choices == tuple(one for one in taken if one not in apart)


@pytest.mark.parametrize("sheet", SHEETS, ids=lambda sheet: sheet.title)
def test_headings_can_be_told_apart(sheet: typing.Any) -> None:
    """Columns are found by heading, so a sheet has each heading once, and a hint that is no heading."""
    headings = [column.heading.lower() for column in sheet.columns]
    assert len(set(headings)) == len(headings)
    assert not {column.hint.lower() for column in sheet.columns} & set(headings)


def test_few_cells_are_needed() -> None:
    """Half an hour with a tape: no table asks for more than seven cells a line."""
    assert max(sum(column.needed for column in sheet.columns) for sheet in SHEETS) <= 7


@pytest.mark.parametrize(
    ("what", "field", "inches", "mm"),
    [
        ("sofa", "depth", 36, 900),
        ("sofa", "height", 34, 850),
        ("sofa", "seat", 17, 430),
        ("armchair", "arm", 24, 610),
        ("bed", "seat", 24, 600),
        ("screen bench", "height", 18, 450),
    ],
)
def test_usual_sizes(what: str, field: str, inches: float, mm: float) -> None:
    """What was not measured has the trade's usual size, in the survey's own kind of number (common practice)."""
    column = next(column for column in FORM_OF["furniture"] if column.field == field)
    assert column.default_for(what, metric=False) == pytest.approx(inches * 25.4)
    assert column.default_for(what, metric=True) == mm


def test_a_screen_of_sixteen_to_nine() -> None:
    """A 55 in diagonal is 47.937 by 26.964 in: geometry, 16 and 9 over the root of 337."""
    assert round(55 * SCREEN_WIDTH, 3) == 47.937
    assert round(55 * SCREEN_HEIGHT, 3) == 26.964
    assert pytest.approx(16 / 337**0.5, abs=1e-6) == SCREEN_WIDTH
    assert pytest.approx(9 / 337**0.5, abs=1e-6) == SCREEN_HEIGHT
