"""What a workbook has to know of its own plan, so that it can be read back."""

from __future__ import annotations

import time
from dataclasses import replace
from fractions import Fraction

from budgetfix.framing.frame import frame
from budgetfix.optimize import Growth, solve
from budgetfix.optimize.problem import Answer
from budgetfix.outcome.book import MoneyLine, NextStep, PlanBook, Stop, Task
from budgetfix.outcome.check import checked
from budgetfix.outcome.make import Around, make_book
from budgetfix.outcome.remembering import as_typed, carried_on, counted_minor, numbered_on, step_id, was_of
from budgetfix.outcome.so_far import LineBack, PlannedLine, PlannedStep, Remembered, SoFar, State, StepBack
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.fit import candidates
from budgetfix.room.items import Piece
from budgetfix.room.survey import Change
from tests.framing.small_jobs import listed_ground
from tests.inspection.rooms import renter

BASE = listed_ground()
FRAMED = frame(BASE, candidates(None, BASE.catalog, BASE.brief, ()), ())
AROUND = Around("t", "", 30.0, None, None, (), NextStep(), (), ())


def small_book(earlier: SoFar | None = None, around: Around = AROUND) -> PlanBook:
    """The book of the small job of listed faults."""
    answer = solve(FRAMED.problem, seconds=30, clock=time.monotonic, growth=Growth(FRAMED.problem))
    assert isinstance(answer, Answer)
    return make_book(BASE, FRAMED, answer, checked(BASE, FRAMED, answer.plan), around, earlier)


def untouched(remembered: Remembered) -> SoFar:
    """A workbook in which nobody wrote anything."""
    return SoFar(remembered, tuple(map(LineBack, remembered.lines)), tuple(StepBack(step) for step in remembered.steps))


def kept(book: PlanBook) -> Remembered:
    """What a book remembers."""
    assert book.remembered is not None
    return book.remembered


def test_the_small_job_is_remembered_whole() -> None:
    """Paint with its delivery, sorting and the way to the mill: units, users, kinds, people, days and sums."""
    found = kept(small_book())
    assert [(one.id, one.units, one.users) for one in found.lines] == [
        ("product:tin@mill", Fraction(5, 2), ("paint",)),
        ("delivery:Delivery, mill@mill", Fraction(0), ()),
    ]
    assert {(one.id, one.kind, one.people) for one in found.steps} == {
        ("errand:mill#1", "errand", ("ann",)),
        ("paint#1", "declared", ("ann",)),
        ("sort#1", "declared", ("ann",)),
    }
    assert [(one.candidate.id, one.chosen) for one in found.candidates] == [("paint", True), ("sort", True)]
    assert (found.spent_minor, found.points_after, found.ordered) == (2700, 100, BASE.brief.ordered)


def test_what_is_settled_is_carried_on_and_the_rest_is_not() -> None:
    """A bought line and a done step stand first in the next book's memory; other rows of the old plan are gone."""
    first = untouched(kept(small_book()))
    earlier = replace(
        first,
        lines=(replace(first.lines[0], state="bought", paid_minor=2500), *first.lines[1:]),
        steps=tuple(replace(one, done=one.planned.id == "sort#1") for one in first.steps),
    )
    settled = carried_on(earlier)
    assert [one.planned.id for one in settled.lines] == ["product:tin@mill"]
    assert [one.planned.id for one in settled.steps] == ["sort#1"]
    assert [one.candidate.id for one in settled.remembered.candidates] == ["sort"]
    book = small_book(earlier)
    assert book.so_far == earlier
    ids = [one.id for one in kept(book).lines]
    assert ids == ["product:tin@mill", "product:tin@mill#2", "delivery:Delivery, mill@mill"]
    assert next(one.id for one in kept(book).steps) == "sort#1"
    assert len({one.id for one in kept(book).steps}) == len(kept(book).steps)
    assert kept(book).spent_minor == 2700 + 2500


def test_all_plans_of_the_slider_number_their_steps_alike() -> None:
    """A step that is done keeps its name to itself, in the book's own plan and in those for other sums of money."""
    first = small_book()
    back = untouched(kept(first))
    earlier = replace(back, steps=tuple(replace(one, done=one.planned.id == "sort#1") for one in back.steps))
    other = Stop(first.best, 0, first.money, first.tasks, first.sessions, first.faults)
    book = small_book(earlier, replace(AROUND, stops=(other, replace(other, this_one=True))))
    for tasks in (book.tasks, *(stop.tasks for stop in book.stops)):
        assert {step_id(task) for task in tasks} == {"errand:mill#1", "paint#1", "sort#2"}


def test_what_counts_as_spent() -> None:
    """A typed sum counts as typed; bought without one counts as planned; given back or sold out counts nothing."""
    line = PlannedLine("tool:saw", MoneyLine("tool", None, "Saw", None, "", 1, 900, 900))
    told: tuple[tuple[State | None, int | None], ...] = (
        ("bought", None), ("bought", 950), (None, 800), ("returned", None), ("returned", 100), ("sold out", None),
        (None, None),
    )  # fmt: skip
    counted = [counted_minor(LineBack(line, state, paid)) for state, paid in told]
    assert counted == [900, 950, 800, 0, 100, 0, 0]


def test_what_counts_is_told_as_it_was_typed() -> None:
    """A bare tick stays one where it counts as planned; what is counted though nobody said so has its sum."""
    lines = [PlannedLine(name, MoneyLine("tool", None, name, None, "", 1, 900, 900)) for name in "abcd"]
    typed: list[tuple[State | None, int | None]] = [("bought", None), ("sold out", None), (None, None), (None, 700)]
    counted: list[tuple[State | None, int | None]] = [
        ("bought", 900),
        ("sold out", 0),
        ("bought", 900),
        ("bought", 700),
    ]
    both = [
        SoFar(Remembered(), tuple(LineBack(line, *said) for line, said in zip(lines, told, strict=True)))
        for told in (typed, counted)
    ]
    found = as_typed(*both)
    assert [(one.state, one.paid_minor) for one in found.lines] == [*typed[:2], *counted[2:]]
    assert [counted_minor(one) for one in found.lines] == [counted_minor(one) for one in both[1].lines]


def test_steps_left_are_numbered_after_those_done() -> None:
    """Of three steps the second is done: the two that are left are 1 and 3 of 3; other remedies keep their numbers."""
    task = Task("rod", "Hang a rod", 2, 3, 1, "Drill", 10, 10, 10, 10, 1)
    done = StepBack(PlannedStep("rod#2", task), True)
    left = tuple(replace(task, step=step, steps=2) for step in (1, 2))
    bare = replace(task, candidate="shelf", step=0, steps=0)
    found = numbered_on((*left, bare), SoFar(Remembered(), (), (done,)))
    assert [(step_id(one), one.steps) for one in found] == [("rod#1", 3), ("rod#3", 3), ("shelf#0", 0)]
    assert numbered_on(left, None) == left


def test_what_is_there_before_a_change_is_remembered() -> None:
    """A field that is set is remembered alone; a thing that goes, whole; a thing that comes has no before."""
    survey = renter()
    changes = (
        Change("furniture", "bookcase", (("fixed", True),)),
        Change("furniture", "plant", add=Piece(name="plant", what="plant", depth=300.0, height=900.0)),
    )
    assert was_of(survey, Candidate("a", "strap", "Strap it", changes=changes)) == (("bookcase", "fixed", False),)
    gone = dict(survey.named["bookcase"][1])
    away = Candidate("b", "away", "Take it away", changes=(Change("furniture", "bookcase", remove=True),))
    assert {field: value for _, field, value in was_of(survey, away)} == gone
    assert was_of(None, away) == ()
