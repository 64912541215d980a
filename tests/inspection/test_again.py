"""Inspecting again after a change: only what asked about something that moved is judged anew; the rest stays."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from budgetfix.brief.models import Brief
from budgetfix.inspection.again import moved_between
from budgetfix.inspection.inspect import look_at, look_at_all, look_at_moved
from budgetfix.inspection.judging import Block, blocks, judges
from budgetfix.inspection.look import Look
from budgetfix.inspection.registry import RULES
from budgetfix.room.survey import Change, Survey
from tests.inspection.rooms import couple_bedroom
from tests.inspection.test_reads import WILD, Wild, changed
from tests.inspection.wall_rooms import couple_walls, renter_walls, stager_walls

BRIEF = Brief()
BLOCKS: tuple[Block, ...] = blocks(["r"], judges(RULES, BRIEF))
ROOMS = (renter_walls, stager_walls, couple_walls, couple_bedroom)


@pytest.mark.parametrize("built", ROOMS, ids=lambda built: built.__name__)
@settings(max_examples=12, deadline=None, derandomize=True)
@given(first=WILD, more=st.lists(WILD, min_size=1, max_size=3))
def test_again_is_what_a_whole_inspection_finds(built: Callable[[], Survey], first: Wild, more: list[Wild]) -> None:
    """In a jumbled room, after one to three changes: findings, points and questions are those of a whole inspection."""
    survey = changed(built(), first)[3]
    after = survey
    for wild in more:
        after = changed(after, wild)[3]
    moved, room = moved_between(survey, after, "r"), Look(after, "r")
    for block, before in zip(BLOCKS, look_at_all(BLOCKS, survey, BRIEF), strict=True):
        whole = look_at(block, after, BRIEF)
        assert look_at_moved(block, after, BRIEF, before, moved) == whole, block.name
        assert look_at_moved(block, after, BRIEF, before, moved, room) == whole, f"{block.name}, one look for all"


def test_nothing_is_judged_again_where_nothing_was_asked() -> None:
    """The renter hangs the picture lower: the rug's findings are the very same objects as before."""
    survey = renter_walls()
    after = survey.changed((Change("pictures", "art", (("bottom", 1000.0),)),))
    moved = moved_between(survey, after, "r")
    assert [(table, item.name) for table, item in moved.things] == [("pictures", "art"), ("pictures", "art")]
    by_name = {block.name: block for block in BLOCKS}
    rug, art = by_name["rug size"], by_name["picture group"]
    before = look_at(rug, survey, BRIEF)
    assert look_at_moved(rug, after, BRIEF, before, moved) is before
    hung = look_at(art, survey, BRIEF)
    assert look_at_moved(art, after, BRIEF, hung, moved) != hung


def test_a_change_that_changes_nothing_moves_nothing() -> None:
    """A rod set to the height that it has already is no change."""
    survey = renter_walls()
    height = survey.curtains[0].rod_height
    after = survey.changed((Change("curtains", "curtain", (("rod_height", height),)),))
    assert moved_between(survey, after, "r").things == ()
