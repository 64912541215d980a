"""Whatever stands in a cell, the reader answers with a survey or with problems, never with an error of ours."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from budgetfix.base.problems import Place
from budgetfix.forms.survey_form import FORM_OF
from budgetfix.intake.raw_rows import RawCell, close_to
from budgetfix.intake.survey_file import judge_raw
from budgetfix.intake.survey_yaml import raw_yaml

FRONT_ROOM = Path(__file__).parent / "rooms" / "front-room.yaml"
FIELDS = [(table, column.field) for table, columns in FORM_OF.items() for column in columns]
WEIRD: list[object] = [
    "",
    True,
    -1,
    0,
    1e9,
    1e300,
    "x",
    [1],
    {"a": 1},
    date(2026, 5, 8),
    "A",
    "Sofa",
    "left",
    "1/0",
    "²",
]


@settings(max_examples=80, deadline=None)
@given(st.sampled_from(FIELDS), st.one_of(st.sampled_from(WEIRD), st.text(max_size=8), st.floats(), st.integers()))
def test_any_value_in_any_cell(field: tuple[str, str], value: object) -> None:
    """One cell of a sound survey is spoilt: problems name that file, and no survey comes with a problem."""
    raw = raw_yaml(FRONT_ROOM)
    row = raw.rows[field[0]][0]
    row.cells[field[1]] = RawCell(value, row.place)
    file = judge_raw(raw)
    assert (file.survey is None) == bool(file.problems)
    assert all(problem.place.file == "front-room.yaml" for problem in file.problems)
    assert list(file.problems) == sorted(set(file.problems))


def test_the_words_of_a_cell() -> None:
    """Messages show what was typed: text in quotes, whole numbers without a point, ticks as yes or no."""
    place = Place("survey.yaml")
    typed: list[object] = ["5O in", 3.0, 2.5, True, date(2026, 5, 8), [1], {}]
    shown = [RawCell(value, place).shown for value in typed]
    assert shown == ["'5O in'", "3", "2.5", "yes", "a date", "a list", "a block of keys"]


def test_did_you_mean() -> None:
    """A word is offered when it is near enough, in its own spelling."""
    assert close_to("big windw", ["Big window", "Sofa"]) == "did you mean Big window?"
    assert close_to("piano", ["Big window", "Sofa"]) == ""
