"""Law 7, the lifting flag and looking again, for every rule in the room that its own case file makes a fault of.

The invented rooms (`test_reads.py`, `test_not_asked.py`, `test_lifting.py`) leave some rules with nothing to judge; the
case files do not: each starts with a fault of its rule.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from budgetfix.brief.models import Brief
from budgetfix.inspection.again import moved_between
from budgetfix.inspection.inspect import Seen, look_at, look_at_moved
from budgetfix.inspection.judging import Block, Judge
from budgetfix.inspection.look import Look
from budgetfix.inspection.registry import RULES
from budgetfix.room.survey import Survey
from tests.inspection.test_cases import FILES, Facts, changed, read, survey_of
from tests.inspection.test_not_asked import others

BRIEF = Brief()
BLOCKS = {rule.slug: Block("r", rule.slug, (Judge(rule, rule.band, rule.weight),)) for rule in RULES}


def start(path: Path) -> tuple[Facts, Survey, Seen]:
    """The case file, its room at the start, and what its rule finds there."""
    data = read(path)
    survey = survey_of(changed(data["room"], data.get("start", {})))
    return data, survey, look_at(BLOCKS[data["rule"]], survey, BRIEF)


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_what_its_rule_did_not_ask_about_changes_nothing(path: Path) -> None:
    """Move, stretch, raise or carry out each thing of the room: what did not ask about it finds what it found."""
    data, survey, before = start(path)
    block, lines = BLOCKS[data["rule"]], Look(survey, "r").lines
    assert any(one.fault for one in before.findings)
    assert before.asked
    for table, item, fresh, other in others(survey):
        versions = [one for one in (item, fresh) if one is not None]
        again = look_at(block, other, BRIEF)
        if not any(question.covers(table, one, lines) for question in before.asked for one in versions):
            assert again == before, item.name
        assert look_at_moved(block, other, BRIEF, before, moved_between(survey, other, "r")) == again, item.name


LIFTING = [path for path in FILES if BLOCKS[path.stem].judges[0].rule.lifting_helps]


@pytest.mark.parametrize("path", LIFTING, ids=lambda path: path.stem)
def test_lifting_a_piece_never_makes_its_rule_worse(path: Path) -> None:
    """In every room of the file: whichever piece is lifted, the rule's findings on the others are no worse."""
    data = read(path)
    for change in ({}, data.get("start", {}), *(case.get("change", {}) for case in data["cases"])):
        survey = survey_of(changed(data["room"], change))
        before = {one.subject: one.severity for one in look_at(BLOCKS[data["rule"]], survey, BRIEF).findings}
        for piece in survey.furniture:
            lifted = look_at(BLOCKS[data["rule"]], survey, BRIEF, frozenset({piece.name})).findings
            for one in lifted:
                assert one.severity <= before.get(one.subject, 0), f"{one.subject} without {piece.name}: {change}"


def test_no_rule_is_left_out() -> None:
    """One case file a rule; and the rules that lifting helps are more than the ways and the doors."""
    assert {path.stem for path in FILES} == set(BLOCKS)
    assert len(LIFTING) >= 5
