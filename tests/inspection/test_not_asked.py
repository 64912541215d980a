"""Law 7: a finding depends on nothing that its rule did not ask about."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import pytest

from budgetfix.brief.models import Brief
from budgetfix.inspection.grouping import rugs_of, seats_of, tables_before
from budgetfix.inspection.inspect import judge_one
from budgetfix.inspection.judging import Judge, judges
from budgetfix.inspection.look import Look
from budgetfix.inspection.registry import RULES
from budgetfix.room.items import TABLES, Item, Table
from budgetfix.room.survey import Survey
from tests.inspection.rooms import couple_bedroom, couple_living, renter, stager_bedroom, stager_living

ROOMS = (renter, stager_living, stager_bedroom, couple_living, couple_bedroom)
ALL = tuple(Judge(rule, rule.band, rule.weight) for rule in sorted(RULES, key=lambda rule: rule.slug))
NUDGES = ({"from_left": 137.0}, {"gap": 211.0}, {"height": 333.0}, {"width": 97.0}, {"bottom": 41.0}, {"lumens": 500.0})


def others(survey: Survey) -> Iterator[tuple[Table, Item, Item | None, Survey]]:
    """(table, thing, the thing changed or None, the survey with it): each thing nudged in each field, and taken out."""
    for table in TABLES:
        for item in survey.table(table):
            fields = dict(item)
            changed: list[Item | None] = [None]
            for nudge in NUDGES:
                if all(name in fields for name in nudge):
                    moved = {name: fields[name] + more for name, more in nudge.items()}
                    changed.append(type(item).model_validate({**fields, **moved}))
            for fresh in changed:
                things = [fresh if one.name == item.name else one for one in survey.table(table)]
                kept = tuple(one for one in things if one is not None)
                yield table, item, fresh, survey.model_copy(update={table: kept})


@pytest.mark.parametrize("built", ROOMS)
def test_what_was_not_asked_changes_nothing(built: Callable[[], Survey]) -> None:
    """Move, stretch, raise or take away anything that a rule did not ask for: its finding is the same."""
    survey, brief = built(), Brief()
    lines = Look(survey, "r").lines
    changed = list(others(survey))
    tried = 0
    for judge in ALL:
        lister = Look(survey, "r")
        for subject in judge.rule.subjects(lister):
            look = Look(survey, "r")
            found = judge_one(judge, look, subject, brief)
            for table, item, fresh, other in changed:
                versions = [one for one in (item, fresh) if one is not None]
                if any(question.covers(table, one, lines) for question in look.asked for one in versions):
                    continue
                tried += 1
                again = judge_one(judge, Look(other, "r"), subject, brief)
                assert again == found, f"{judge.rule.slug} on {subject} did not ask about {item.name}"
    assert tried > 500


@pytest.mark.parametrize("built", ROOMS)
def test_subjects_depend_on_what_was_asked(built: Callable[[], Survey]) -> None:
    """The list of subjects, too, is the same when something else changes."""
    survey = built()
    lines = Look(survey, "r").lines
    for judge in ALL:
        look = Look(survey, "r")
        subjects = sorted(judge.rule.subjects(look))
        for table, item, fresh, other in others(survey):
            versions = [one for one in (item, fresh) if one is not None]
            if not any(question.covers(table, one, lines) for question in look.asked for one in versions):
                assert sorted(judge.rule.subjects(Look(other, "r"))) == subjects, judge.rule.slug


def test_the_group_is_what_stands_around_the_main_seat() -> None:
    """The renter's group: sofa and armchair, one rug, one table before the sofa; the stager's is the sofa alone."""
    look = Look(renter(), "r")
    sofa = look.piece("sofa")
    assert sofa is not None
    assert [seat.name for seat in seats_of(look)] == ["armchair", "sofa"]
    assert [rug.name for rug in rugs_of(look)] == ["rug"]
    assert [table.name for table in tables_before(look, sofa)] == ["table"]
    assert [seat.name for seat in seats_of(Look(stager_living(), "r"))] == ["sofa"]


def test_judges_are_all_rules_that_are_on() -> None:
    """The default brief switches off only what is off by itself or by the profile."""
    on = {judge.rule.slug for judge in judges(RULES, Brief())}
    assert "all-straight-edges" not in on
    assert {"floor-bare", "walkway-too-narrow"} <= on
