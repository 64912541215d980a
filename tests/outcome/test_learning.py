"""From ticked steps to the household's paces."""

from __future__ import annotations

from fractions import Fraction

import pytest

from budgetfix.brief.models import Brief
from budgetfix.outcome.book import Task
from budgetfix.outcome.learning import paces_of
from budgetfix.outcome.paces import Paces
from budgetfix.outcome.so_far import PlannedStep, Remembered, SoFar, StepBack


def step(candidate: str, minutes: int, real: int | None, *, done: bool = True, base: int = 0) -> StepBack:
    """A step of a rod as it came back from the workbook."""
    task = Task(candidate, candidate, 1, 1, 1, "", minutes, minutes, minutes, minutes, 1)
    return StepBack(PlannedStep(f"{candidate}#1", task, "longer-rod", base), done, real)


def so_far(*steps: StepBack) -> SoFar:
    """An earlier plan of which only the steps matter."""
    return SoFar(Remembered(), (), steps)


def test_only_done_steps_with_real_minutes_tell() -> None:
    """Not ticked, or ticked without minutes, or a round of shops: nothing is learnt from it."""
    nothing = (step("a", 30, 60, done=False), step("b", 30, None), step("errand:shops", 60, 120))
    assert paces_of(Brief(), so_far(*nothing)) == Paces()
    assert paces_of(Brief(), so_far(step("c", 30, 45), *nothing)).household == Fraction(11, 10)


def test_minutes_before_any_pace_count() -> None:
    """A step planned at 45 because the household was known to be slow, and 30 before that, is held against the 30."""
    assert paces_of(Brief(), so_far(step("c", 45, 45, base=30))).household == Fraction(11, 10)


@pytest.mark.parametrize("pace", [(), (("all", Fraction(6, 5)),)])
def test_learning_switched_off(pace: tuple[tuple[str, Fraction], ...]) -> None:
    """With `learn: off` only what the brief says counts."""
    paces = paces_of(Brief(learn=False, pace=pace), so_far(step("c", 30, 60)))
    assert paces.pace == (pace or (("all", Fraction(1)),))
    assert not paces.learnt
