"""What is taken away keeps its points unless its absence rule passes: at what it was there for, not somewhere else."""

from __future__ import annotations

from budgetfix.framing.measured import gone
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.inspect import look_again, look_at
from budgetfix.inspection.judging import blocks, judges
from budgetfix.inspection.registry import RULES
from budgetfix.room.survey import Change, Survey
from tests.scenarios import job


def kept(name: str, before: Survey, changes: tuple[Change, ...]) -> list[Finding]:
    """The findings of a demo job that keep their points after some changes, because something was taken away."""
    judged = judges(RULES, job(name).brief)
    after = before.changed(changes)
    found = []
    for block in blocks([facts.room for facts in before.rooms], judged):
        seen = look_at(block, before, job(name).brief)
        absences = {judge.rule.slug: judge for judge in judged}
        away = gone(before, after, block.room)
        again = look_again(block, after, job(name).brief, seen, away, absences)
        found += [finding for finding in again.findings if finding.kept]
    return found


def take(survey: Survey, *names: str) -> tuple[Change, ...]:
    """These things taken away."""
    return tuple(Change(survey.named[name][0], name, remove=True) for name in names)


def not_overlooked(survey: Survey) -> Survey:
    """The stager's two front windows, into which nobody can see: bare, they would be no fault of their own."""
    windows = [one.name for one in survey.openings if one.what == "window"]
    return survey.changed(Change("openings", name, (("overlooked", False),)) for name in windows)


def test_a_sound_wall_elsewhere_is_no_excuse() -> None:
    """Both pictures over the renter's desk gone: the wall over the sofa is not bare, but that is another wall."""
    survey = job("renter").survey
    assert survey is not None
    found = kept("renter", survey, take(survey, "picture over the desk 1", "picture over the desk 2"))
    assert [(one.rule, one.subject) for one in found] == [("art-out-of-level", "pictures over the desk")]


def test_one_of_two_pictures_may_go() -> None:
    """The one that is left hangs over the desk still: nothing is out of level any more."""
    survey = job("renter").survey
    assert survey is not None
    assert kept("renter", survey, take(survey, "picture over the desk 2")) == []


def test_one_rod_across_two_windows_dresses_both() -> None:
    """The right curtain goes, the left one hangs before both windows: its faults are gone with it."""
    survey = job("stager").survey
    assert survey is not None
    survey = not_overlooked(survey)
    across = Change("curtains", "left curtain", (("also_window", "right window"), ("rod_width", 144 * 25.4)))
    assert kept("stager", survey, (*take(survey, "right curtain"), across)) == []
    alone = kept("stager", survey, take(survey, "right curtain"))
    assert {one.subject for one in alone if one.rule == "hem-off-floor"} == {"right window"}


def test_a_tall_piece_that_has_left_cannot_tip() -> None:
    """The china cabinet carried out: its hazard is gone; a bookcase's lamp or picture would keep theirs."""
    survey = job("stager").survey
    assert survey is not None
    assert [one.rule for one in kept("stager", survey, take(survey, "china cabinet"))] == []


def test_a_window_that_people_look_into_may_not_be_bare() -> None:
    """The right curtain gone: the window is bare, and its curtain's faults keep their points; with a blind they go."""
    survey = job("stager").survey
    assert survey is not None
    bare = kept("stager", survey, take(survey, "right curtain"))
    assert "right window" in {one.subject for one in bare if one.rule == "hem-off-floor"}
    blind = Change("openings", "right window", (("blind", True),))
    assert kept("stager", survey, (*take(survey, "right curtain"), blind)) == []


def test_a_bare_window_elsewhere_is_no_blame() -> None:
    """One rod hangs across both front windows; that a third window on another wall is bare is that window's matter."""
    survey = job("stager").survey
    assert survey is not None
    right = survey.named["right window"][1]
    third = right.model_copy(update={"name": "side window", "wall": "D", "from_left": 300.0})
    survey = survey.changed((Change("openings", "side window", add=third),))
    across = Change("curtains", "left curtain", (("also_window", "right window"), ("rod_width", 144 * 25.4)))
    assert kept("stager", survey, (*take(survey, "right curtain"), across)) == []


def test_what_serves_in_its_place_was_asked_about() -> None:
    """That the left curtain hangs before both windows now was found by asking for all that could serve them: whoever
    changes one of these changes the answer.
    """
    survey, brief = job("stager").survey, job("stager").brief
    assert survey is not None
    survey, judged = not_overlooked(survey), judges(RULES, brief)
    across = Change("curtains", "left curtain", (("also_window", "right window"), ("rod_width", 144 * 25.4)))
    after = survey.changed((*take(survey, "right curtain"), across))
    (block,) = (one for one in blocks(["living room"], judged) if one.name == "window dressing")
    seen, absences = look_at(block, survey, brief), {judge.rule.slug: judge for judge in judged}
    again = look_again(block, after, brief, seen, gone(survey, after, "living room"), absences)
    asked = {question.table for question in set(again.asked) - set(seen.asked) if question.names is None}
    assert {"pictures", "rugs"} <= asked
