"""The working order inside a session: needs and step order first, then phase, then the biggest first."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Slot:
    """One step in one session. `after`: keys that must come earlier when they share the session."""

    key: tuple[str, int]
    phase: int
    minutes: int
    after: tuple[tuple[str, int], ...] = ()


def working_order(slots: Iterable[Slot]) -> tuple[tuple[str, int], ...]:
    """Keys in working order. Phase by phase, within a phase the longest first, ties by key."""
    waiting = sorted(slots, key=lambda slot: (slot.phase, -slot.minutes, slot.key))
    here = {slot.key for slot in waiting}
    done: list[tuple[str, int]] = []
    while waiting:
        ready = next(slot for slot in waiting if _ready(slot, here, done))
        done.append(ready.key)
        waiting.remove(ready)
    return tuple(done)


def _ready(slot: Slot, here: set[tuple[str, int]], done: Sequence[tuple[str, int]]) -> bool:
    return all(key in done for key in slot.after if key in here)


def predecessors(id: str, step: int, needs: Iterable[str], last_step: Mapping[str, int]) -> tuple[tuple[str, int], ...]:
    """The step before, or for a first step the last steps of everything needed."""
    if step > 0:
        return ((id, step - 1),)
    return tuple((need, last_step[need]) for need in sorted(needs) if last_step.get(need, -1) >= 0)
