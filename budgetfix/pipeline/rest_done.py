"""Which candidates of an earlier plan are done, and which are begun, by the steps that are ticked."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from budgetfix.framing.options import ERRAND
from budgetfix.outcome.so_far import Planned, SoFar, StepBack
from budgetfix.remedies.candidate import Candidate


@dataclass(frozen=True)
class Done:
    """`done` in the order in which the work was done, `begun` by id. `steps`: ticked steps by candidate, from 1."""

    done: tuple[Planned, ...] = ()
    begun: tuple[Planned, ...] = ()
    steps: Mapping[str, tuple[StepBack, ...]] = ()  # type: ignore[assignment]

    @property
    def ids(self) -> frozenset[str]:
        """Ids of what is done whole."""
        return frozenset(one.candidate.id for one in self.done)

    @property
    def begun_ids(self) -> tuple[str, ...]:
        """Ids of what is begun."""
        return tuple(one.candidate.id for one in self.begun)

    def numbers(self, id: str) -> frozenset[int]:
        """Numbers, from 1, of the ticked steps of a candidate."""
        return frozenset(one.planned.task.step for one in self.steps.get(id, ()))

    def step(self, id: str, number: int) -> StepBack | None:
        """A ticked step of a candidate."""
        return next((one for one in self.steps.get(id, ()) if one.planned.task.step == number), None)


def done_of(so_far: SoFar) -> Done:
    """What the ticks say; errands are no candidates."""
    steps: dict[str, list[StepBack]] = {}
    for one in so_far.done:
        if not one.planned.task.candidate.startswith(ERRAND):
            steps.setdefault(one.planned.task.candidate, []).append(one)
    known = {one.candidate.id: one for one in so_far.remembered.candidates}
    ticked = [known[id] for id in sorted(steps) if id in known]
    whole = [one for one in ticked if _whole(one.candidate, steps[one.candidate.id])]
    begun = tuple(one for one in ticked if one not in whole)
    return Done(_in_order(whole, so_far), begun, {id: tuple(found) for id, found in steps.items()})


def _whole(one: Candidate, ticked: Iterable[StepBack]) -> bool:
    """A remedy without steps has one row, its step 0."""
    numbers = {back.planned.task.step for back in ticked}
    return numbers >= set(range(1, len(one.work) + 1))


def _in_order(whole: Iterable[Planned], so_far: SoFar) -> tuple[Planned, ...]:
    """As their last steps stand in the workbook (what was carried over stands first), each after what it needs."""
    last = {back.planned.task.candidate: at for at, back in enumerate(so_far.steps) if back.done}
    waiting = sorted(whole, key=lambda one: (last[one.candidate.id], one.candidate.id))
    found: list[Planned] = []
    while waiting:
        ids = {one.candidate.id for one in waiting}
        first = next((one for one in waiting if ids.isdisjoint(one.candidate.needs)), waiting[0])
        waiting.remove(first)
        found.append(first)
    return tuple(found)


def left_of(planned: Planned, done: Done) -> Candidate:
    """A begun candidate with the steps that are not done; a wait on a done step is counted elsewhere."""
    numbers = done.numbers(planned.candidate.id)
    work = []
    for at, step in enumerate(planned.candidate.work, start=1):
        if at not in numbers:
            work.append(replace(step, wait_sessions=0, wait_minutes=0) if at - 1 in numbers else step)
    return replace(planned.candidate, work=tuple(work))
