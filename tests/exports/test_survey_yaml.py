"""A survey written as text reads back as the same survey, whatever stands in it."""

from __future__ import annotations

import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from budgetfix.base.signs import tidied, without
from budgetfix.brief.models import ListedFault
from budgetfix.exports.survey_yaml import survey_yaml
from budgetfix.intake.survey_file import SurveyFile, read_survey
from budgetfix.room.items import Piece
from budgetfix.room.survey import Household, RoomFacts, Survey, Wall
from tests.inspection.test_cases import FILES, changed, read, survey_of
from tests.laws.source import REPO

DEMOS = sorted((REPO / "catalog_demo").glob("*/survey.*")) + sorted((REPO / "tests/intake/rooms").glob("*.yaml"))
NAMES = st.text(min_size=1, max_size=12).map(lambda text: " ".join(tidied(without(text)).split())).filter(bool)
"""As they are once they were read: no sign that does something, or that nobody sees."""
LENGTHS = st.floats(1.0, 60_000.0).map(lambda mm: round(mm, 9)) | st.integers(1, 60_000).map(float)


def again(survey: Survey, faults: tuple[ListedFault, ...] = ()) -> SurveyFile:
    """The survey written and read back."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "survey.yaml"
        path.write_bytes(survey_yaml(survey, faults, ("a note",)))
        return read_survey(path)


@pytest.mark.parametrize("path", DEMOS, ids=lambda path: f"{path.parent.name}/{path.name}")
def test_every_survey_at_hand_reads_back_equal(path: Path) -> None:
    """The demos' surveys and those of the tests: every figure, every guess and every listed fault."""
    first = read_survey(path)
    assert first.survey is not None
    second = again(first.survey, first.faults)
    assert second.problems == ()
    assert second.survey == first.survey
    assert second.faults == first.faults


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_the_room_of_every_rule_reads_back_equal(path: Path) -> None:
    """The room of each rule's case file, with what its survey leaves blank taken as usual, is the same once more."""
    data = read(path)
    first = again(survey_of(changed(data["room"], data.get("start", {}))))
    assert first.problems == ()
    assert first.survey is not None
    assert again(first.survey).survey == first.survey


@settings(max_examples=60, deadline=None, derandomize=True)
@given(NAMES, NAMES, LENGTHS, LENGTHS, st.sampled_from(("in", "cm", "mm")), st.booleans())
def test_any_name_and_any_length_reads_back_equal(
    name: str, what: str, width: float, left: float, unit: str, rent: bool
) -> None:
    """Quotes, colons, hashes, emoji, words that mean yes, lengths to a nanometre, 40 metres that look like a date."""
    box = Piece(name=name, room="hall", what=what, wall="A", from_left=left, width=width, depth=700.0, height=800.0)
    sizes = {"A": 200_000.0, "B": 150_000.0, "C": 200_000.0, "D": 150_000.0}
    first = Survey(
        household=Household.model_validate({"unit": unit, "rent": rent, "before_1978": rent or None}),
        rooms=(RoomFacts(room="hall", ceiling=2400.0),),
        walls=tuple(Wall(room="hall", wall=letter, length=length) for letter, length in sizes.items()),
        furniture=(box,),
    )
    found = again(first)
    assert found.problems == ()
    assert found.survey is not None
    read_box = found.survey.furniture[0]
    assert (read_box.name, read_box.width, read_box.from_left) == (name, width, left)
    assert again(found.survey).survey == found.survey


def test_a_corner_that_is_not_square_keeps_its_turn() -> None:
    """Five walls with two corners of 45 degrees, and a last turn that follows from the others."""
    turns = (("A", 4000.0, 90.0), ("B", 3000.0, 45.0), ("C", 1414.214, 45.0), ("D", 3000.0, 90.0), ("E", 4000.0, 90.0))
    walls = tuple(Wall(room="den", wall=name, length=length, turn=turn) for name, length, turn in turns)
    survey = Survey(rooms=(RoomFacts(room="den", ceiling=2400.0),), walls=walls)
    found = again(survey)
    assert found.problems == ()
    assert found.survey == survey


def test_the_text_can_be_read_by_a_person() -> None:
    """One line a thing, in the unit of the survey, with a note at the head."""
    survey = Survey(
        rooms=(RoomFacts(room="den", ceiling=2400.0),),
        walls=tuple(Wall(room="den", wall=name, length=3000.0) for name in "ABCD"),
        household=Household(unit="cm"),
    )
    text = survey_yaml(survey, (ListedFault(fault="smell: cat", points=40, safety=True),), ("As it will be.",))
    assert text.decode() == (
        "# As it will be.\n"
        "unit: cm\n"
        "home: {rent: no, before_1978: not sure, children: no, toddlers: no, walkers: no, step_free: no}\n"
        "rooms:\n"
        "  - {room: den, kind: living room, ceiling: 240, floor: hard}\n"
        "walls:\n"
        "  - {wall: A, length: 300}\n"
        "  - {wall: B, length: 300}\n"
        "  - {wall: C, length: 300}\n"
        "  - {wall: D, length: 300}\n"
        "faults:\n"
        '  - {fault: "smell: cat", points: 40, safety: yes}\n'
    )
