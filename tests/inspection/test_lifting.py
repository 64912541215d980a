"""Rules that say lifting a piece can never make them worse: every piece is lifted from many rooms."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from budgetfix.brief.models import Brief
from budgetfix.inspection.inspect import look_at
from budgetfix.inspection.judging import Block, judges
from budgetfix.inspection.registry import RULES
from budgetfix.inspection.rule import Rule
from budgetfix.room.survey import Survey
from tests.inspection.rooms import couple_bedroom, couple_living, renter, seen, stager_bedroom, stager_living

FLAGGED = [rule for rule in RULES if rule.lifting_helps]
ROOMS = (renter, stager_living, stager_bedroom, couple_living, couple_bedroom)
ANCHORS = {"sofa", "bed"}


def severities(rule: Rule, survey: Survey, lifted: frozenset[str] = frozenset()) -> list[Fraction]:
    """Severities of one rule in a room, worst first, sound ones left out."""
    found = look_at(Block("r", rule.slug, judges([rule], Brief())), survey, Brief(), lifted).findings
    return sorted((finding.severity for finding in found if finding.severity > 0), reverse=True)


def jumbled(survey: Survey, moves: list[tuple[int, int]]) -> Survey:
    """The room with its furniture slid about by steps of 150 mm."""
    for piece, (aside, off) in zip(survey.furniture, moves, strict=False):
        survey = seen(
            survey, piece.name, from_left=piece.from_left + 150.0 * aside, gap=max(0.0, piece.gap + 150.0 * off)
        )
    return survey


@pytest.mark.parametrize("rule", FLAGGED, ids=lambda rule: rule.slug)
@pytest.mark.parametrize("built", ROOMS)
@settings(max_examples=6, deadline=None)
@given(st.lists(st.tuples(st.integers(-4, 4), st.integers(-2, 4)), min_size=14, max_size=14))
def test_lifting_never_makes_it_worse(rule: Rule, built: Callable[[], Survey], moves: list[tuple[int, int]]) -> None:
    """Whatever is lifted: the worst finding, the second worst and so on are no worse than before."""
    survey = jumbled(built(), moves)
    before = severities(rule, survey)
    for piece in survey.furniture:
        if piece.name not in ANCHORS:
            after = severities(rule, survey, frozenset({piece.name}))
            assert len(after) <= len(before), piece.name
            assert all(now <= then for now, then in zip(after, before, strict=False)), piece.name


def test_the_rules_about_ways_and_fronts_are_flagged() -> None:
    """What lazy rows need is flagged: ways, doors, fronts, chairs."""
    assert {rule.slug for rule in FLAGGED} >= {
        "walkway-too-narrow",
        "door-cannot-open",
        "front-blocked",
        "chairs-boxed-in",
    }
