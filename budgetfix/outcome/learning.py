"""From an earlier plan's ticks to the household's paces."""

from __future__ import annotations

from budgetfix.brief.models import Brief
from budgetfix.framing.options import ERRAND
from budgetfix.outcome.paces import Paces, Took, learnt
from budgetfix.outcome.so_far import SoFar, StepBack


def paces_of(brief: Brief, so_far: SoFar) -> Paces:
    """What the brief believes, and with `learn` on what the done steps of an earlier plan tell.

    A brief with `pace` set to what this gives (`Paces.pace`) is planned at these paces.
    """
    return learnt(brief.pace, map(_took, filter(_tells, so_far.done)) if brief.learn else ())


def _tells(step: StepBack) -> bool:
    return step.real_minutes is not None and not step.planned.task.candidate.startswith(ERRAND)


def _took(step: StepBack) -> Took:
    return Took(step.planned.kind, step.planned.base_minutes or step.planned.task.minutes, step.real_minutes or 0)
