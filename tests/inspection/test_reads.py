"""Law 7 and the lifting flag, held by random changes to the three invented rooms, over every registered rule."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from budgetfix.brief.models import Brief
from budgetfix.inspection.inspect import judge_one
from budgetfix.inspection.judging import Judge
from budgetfix.inspection.look import Look, Question
from budgetfix.inspection.registry import RULES
from budgetfix.inspection.rule import Rule
from budgetfix.room.items import TABLES, Item, Table, Thing
from budgetfix.room.survey import Change, Survey, moved
from tests.inspection.wall_rooms import couple_walls, renter_walls, stager_walls

ROOMS = (renter_walls, stager_walls, couple_walls)
LENGTHS = ("from_left", "gap", "width", "depth", "height", "bottom", "hem", "rod_height", "rod_from_left", "rod_width",
           "panel_width", "lumens", "top")  # fmt: skip
WORDS: dict[str, tuple[str | bool, ...]] = {
    "wall": ("A", "B", "C", "D"),
    "blind": (True, False),
    "leaned": (True, False),
    "over": ("", "sofa"),
    "group": ("", "a", "b"),
    "fixing": ("strap", "none"),
    "fixed": (True, False),
}
Wild = tuple[int, int, int, float, int]
WILD = st.tuples(st.integers(0, 60), st.integers(0, 4), st.integers(0, 12), st.floats(100.0, 3000.0), st.integers(0, 3))
"""Which thing, whether it goes, which field, and the field's new length or word."""


def changed(survey: Survey, wild: Wild) -> tuple[Table, Item, Item | None, Survey]:
    """One thing of the room taken away, or changed in one field; (table, before, after, the other room)."""
    which, how, word, length, choice = wild
    things = [(table, item) for table in TABLES for item in survey.table(table)]
    table, item = things[which % len(things)]
    if how == 0:
        return table, item, None, survey.changed((Change(table, item.name, remove=True),))
    names = [name for name in (*LENGTHS, *WORDS) if name in type(item).model_fields]
    name = names[word % len(names)]
    fresh = moved(item, **{name: WORDS[name][choice % len(WORDS[name])] if name in WORDS else length})
    return table, item, fresh, survey.changed((Change(table, item.name, ((name, getattr(fresh, name)),)),))


def touched(asked: tuple[Question, ...], survey: Survey, table: Table, versions: tuple[Thing | None, ...]) -> bool:
    """True where a question covers the thing, as it was or as it is now."""
    lines = Look(survey, "r").lines
    return any(question.covers(table, one, lines) for question in asked for one in versions if one is not None)  # type: ignore[arg-type]


def findings(
    rule: Rule, survey: Survey, lifted: frozenset[str] = frozenset()
) -> dict[str, tuple[object, tuple[Question, ...]]]:
    """Of each subject: the finding, and every question that was asked to get it."""
    lister = Look(survey, "r", lifted)
    found: dict[str, tuple[object, tuple[Question, ...]]] = {}
    for subject in sorted(rule.subjects(lister)):
        look = Look(survey, "r", lifted)
        finding = judge_one(Judge(rule, rule.band, rule.weight), look, subject, Brief())
        found[subject] = (finding, (*lister.asked, *look.asked))
    return found


@pytest.mark.parametrize("built", ROOMS, ids=lambda built: built.__name__)
@settings(max_examples=20, deadline=None, derandomize=True)
@given(first=WILD, second=WILD)
def test_what_a_finding_did_not_ask_about_cannot_change_it(
    built: Callable[[], Survey], first: Wild, second: Wild
) -> None:
    """In a room that is already jumbled, change anything else: the finding is the same to the last digit."""
    survey = changed(built(), first)[3]
    table, item, fresh, other = changed(survey, second)
    for rule in RULES:
        after = None
        for subject, (finding, asked) in findings(rule, survey).items():
            if touched(asked, survey, table, (item, fresh)):
                continue
            after = findings(rule, other) if after is None else after
            assert after[subject][0] == finding, f"{rule.slug} on {subject} did not ask about {item.name}"


LIFTING = [rule for rule in RULES if rule.lifting_helps]


@pytest.mark.parametrize("built", ROOMS, ids=lambda built: built.__name__)
@settings(max_examples=8, deadline=None, derandomize=True)
@given(
    wild=st.tuples(
        st.integers(0, 60), st.integers(1, 4), st.integers(0, 12), st.floats(100.0, 3000.0), st.integers(0, 3)
    ),
    lifted=st.integers(0, 40),
)
def test_lifting_a_piece_never_makes_a_flagged_rule_worse(built: Callable[[], Survey], wild: Wild, lifted: int) -> None:
    """Rules that lazy rows lean on: with any one piece lifted, what they find on each subject is no worse."""
    survey = changed(built(), wild)[3]
    name = survey.furniture[lifted % len(survey.furniture)].name
    for rule in LIFTING:
        before, after = findings(rule, survey), findings(rule, survey, frozenset({name}))
        for subject in sorted(set(before) & set(after)):
            then, now = before[subject][0], after[subject][0]
            if now is not None and name != subject:
                assert _severity(now) <= _severity(then), f"{rule.slug} on {subject} without {name}"


def _severity(finding: object) -> Fraction:
    return Fraction(getattr(finding, "severity", 0))


def test_the_rules_that_are_read_cover_the_walls() -> None:
    """The three rooms give every rule about screens, windows and pictures something to judge, but for a few."""
    judged = {rule.slug for rule in RULES for built in ROOMS if findings(rule, built())}
    walls = {rule.slug for rule in RULES if rule.family in ("screen", "window dressing", "picture group")}
    rare = {
        "art-light-off",
        "cables-on-show",
        "art-crowds-curtains",
        "sconce-off-height",
        "sconces-uneven",
        "window-bare",
    }
    assert walls - judged <= rare
