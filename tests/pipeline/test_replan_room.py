"""The room after the plan: what is done is in it, a new measure wins, doing nothing is always allowed."""

from __future__ import annotations

from dataclasses import replace

import pytest

from budgetfix.brief.models import Brief
from budgetfix.catalog.models import Catalog
from budgetfix.intake.job import Job
from budgetfix.outcome.remembering import was_of
from budgetfix.outcome.so_far import Planned
from budgetfix.pipeline.inspecting import inspected
from budgetfix.pipeline.rest_room import room_before, room_now
from budgetfix.remedies.candidate import Candidate
from budgetfix.room.items import Piece, Rug
from budgetfix.room.survey import Change, Survey, Value
from tests.framing.small_jobs import SATURDAY, SUNDAY, measured_ground
from tests.pipeline.ticked import TODAY, back, everything, ids, plan_of, rest


def room_job() -> Job:
    """The measured room of the framing tests, two sessions, no money."""
    base = measured_ground(Brief(hours=(SATURDAY, SUNDAY), ordered=TODAY))
    return Job("room", base.survey, base.brief, Catalog(), (), (), ())


def rug_of(survey: Survey | None) -> Rug:
    """The rug of the room."""
    assert survey is not None
    return next(one for one in survey.rugs if one.name == "rug")


def with_rug(survey: Survey | None, **fields: Value) -> Survey:
    """The room with the rug otherwise."""
    assert survey is not None
    return survey.changed([Change("rugs", "rug", tuple(fields.items()))])


def done(survey: Survey | None, *changes: Change, id: str = "x") -> Planned:
    """A candidate with these changes, as a plan remembers it."""
    one = Candidate(id, "slide-rug", id, changes=changes)
    return Planned(one, True, was_of(survey, one))


def test_what_is_done_is_in_the_room() -> None:
    """Half of the plan is done: the room has its changes, the rest is planned on it, and ends where the plan ended."""
    job = room_job()
    book = plan_of(job)
    assert len(book.chosen) > 1
    first = book.tasks[0].candidate
    steps = tuple(f"{task.candidate}#{task.step}" for task in book.tasks if task.candidate == first)
    found = rest(job, back(book, done=steps))
    assert ids(found.book) == [id for id in ids(book) if id != first]
    assert found.left.job.survey != job.survey
    assert found.book.points_before == inspected(replace(job, survey=found.left.job.survey)).points
    assert (found.book.points_after, found.book.hazard_points_after) == (book.points_after, book.hazard_points_after)
    assert found.book.drawn is not None
    assert found.book.drawn.before == found.left.job.survey


def test_nothing_ticked_is_the_same_plan() -> None:
    """All figures and all steps, but for how often the chooser looked."""
    job = room_job()
    book = plan_of(job)
    found = rest(job, back(book)).book
    unlike = {"inspections": 0, "placings": 0, "so_far": None, "remembered": None}
    assert replace(found, **unlike) == replace(book, **unlike)  # type: ignore[arg-type]


def test_everything_done_is_an_empty_plan() -> None:
    """By proof: the room as the plan left it, and nothing that would better it."""
    job = room_job()
    book = plan_of(job)
    found = rest(job, everything(book)).book
    assert (found.chosen, found.improvement, found.proven) == ((), 0, True)
    assert (found.points_before, found.hazards_before) == (book.points_after, book.hazards_after)


def test_a_new_measure_wins_field_by_field() -> None:
    """The rug was to lie 700 mm off the wall and was measured at 650: it lies there, as far to the left as planned."""
    survey = room_job().survey
    slid = done(survey, Change("rugs", "rug", (("gap", 700.0), ("from_left", 1450.0))))
    again = with_rug(survey, gap=650.0)
    assert (rug_of(room_now(again, [slid])).gap, rug_of(room_now(again, [slid])).from_left) == (650.0, 1450.0)
    before = rug_of(room_before(again, [slid]))
    assert (before.gap, before.from_left) == (rug_of(survey).gap, rug_of(survey).from_left)


def test_a_survey_that_knows_all_of_it_already() -> None:
    """The new rug is in the survey now: it is not laid twice, and it was not there before."""
    survey = room_job().survey
    assert survey is not None
    mat = Rug(name="mat", room="r", wall="A", from_left=200.0, gap=0.0, width=800.0, depth=500.0)
    laid = done(survey, Change("rugs", "mat", add=mat))
    known = survey.changed([Change("rugs", "mat", add=mat.model_copy(update={"width": 900.0}))])
    assert [one.width for one in room_now(known, [laid]).rugs if one.name == "mat"] == [900.0]
    assert room_before(known, [laid]).rugs == survey.rugs
    assert [one.name for one in room_now(survey, [laid]).rugs] == ["rug", "mat"]


def test_what_was_taken_away_comes_back_for_the_room_before() -> None:
    """The bookcase is gone from the survey, as the plan had it: before, it stood there."""
    survey = room_job().survey
    assert survey is not None
    away = done(survey, Change("furniture", "bookcase", remove=True))
    without = survey.changed(away.candidate.changes)
    assert room_now(survey, [away]).furniture == without.furniture == room_now(without, [away]).furniture
    assert {one.name: one for one in room_before(without, [away]).furniture} == {
        one.name: one for one in survey.furniture
    }


def test_two_remedies_on_one_thing() -> None:
    """The second builds on the first: both are in the room, in their order, also where each plan saw another room."""
    survey = room_job().survey
    assert survey is not None
    first = done(survey, Change("rugs", "rug", (("width", 2400.0),)), id="a")
    later = done(survey.changed(first.candidate.changes), Change("rugs", "rug", (("width", 2500.0),)), id="b")
    assert rug_of(room_now(survey, [first, later])).width == 2500.0
    assert rug_of(room_before(survey, [first, later])).width == rug_of(survey).width


def test_a_guess_that_a_remedy_has_set_is_no_guess() -> None:
    """Nobody measured whether there is a pad; now one was laid."""
    survey = room_job().survey
    assert survey is not None
    guessed = survey.model_copy(update={"guessed": frozenset({("rug", "pad"), ("sofa", "arm")})})
    padded = done(guessed, Change("rugs", "rug", (("pad", True),)))
    assert room_now(guessed, [padded]).guessed == {("sofa", "arm")}


def test_a_piece_in_the_way_of_what_is_left_is_no_error() -> None:
    """After the plan a chest was put where the rest would move something: what has no room now is left out."""
    job = room_job()
    book = plan_of(job)
    assert job.survey is not None
    chest = Piece(
        name="chest", room="r", what="chest", wall="A", from_left=1500.0, width=2000.0, depth=1500.0, height=600.0
    )
    fuller = replace(job, survey=job.survey.changed([Change("furniture", "chest", add=chest)]))
    found = rest(fuller, back(book))
    assert found.book.proven


@pytest.mark.parametrize("pushed", [0.0, 900.0])
def test_doing_nothing_is_always_allowed(pushed: float) -> None:
    """Somebody laid the rug far worse than it was: the guard asks for no less than what is there now."""
    job = room_job()
    book = plan_of(job)
    first = book.tasks[0].candidate
    steps = tuple(f"{task.candidate}#{task.step}" for task in book.tasks if task.candidate == first)
    worse = replace(job, survey=with_rug(job.survey, gap=pushed, from_left=100.0))
    assert rest(worse, back(book, done=steps)).book.proven
