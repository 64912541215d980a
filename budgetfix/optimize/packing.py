"""Fill sessions one after the other as full as can be: for one person and steps that need no waits.

After T.R. Hoffmann, Assembly line balancing with a precedence matrix, Management Science 9, 1963, and
K. Fleszar and K. Hindi, An enumerative heuristic for the assembly line balancing problem, EJOR 145, 2003.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

NODES = 1500
"""Sets looked at in one session."""
LEANINGS = ((1, 0, False), (200, 1, False), (20, 1, False), (1, 0, True), (5, 1, False), (1, 1, False))
LOOSE_LEANINGS = ((1, 0, True), (1, 0, False))
"""(weight of minutes, weight of all that follows, the heaviest ready step is in anyway)."""


@dataclass(frozen=True, slots=True)
class Work:
    """Steps by number: minutes, and which steps come before (the same session is allowed)."""

    minutes: tuple[int, ...]
    before: tuple[tuple[int, ...], ...]

    @property
    def after(self) -> tuple[tuple[int, ...], ...]:
        found: list[list[int]] = [[] for _ in self.minutes]
        for step, ahead in enumerate(self.before):
            for one in ahead:
                found[one].append(step)
        return tuple(map(tuple, found))

    def following(self) -> tuple[int, ...]:
        """Minutes of each step and of all that follows it."""
        after = self.after
        totals = []
        for start in range(len(self.minutes)):
            seen: set[int] = set()
            stack = [start]
            while stack:
                step = stack.pop()
                if step not in seen:
                    seen.add(step)
                    stack.extend(after[step])
            totals.append(sum(self.minutes[step] for step in seen))
        return tuple(totals)


def packed(work: Work, room: Sequence[int]) -> tuple[int, ...] | None:
    """A session for each step so that all fit into `room` (minutes by session), or None where none was found."""
    same = len(set(room)) <= 1
    tied = any(work.before)
    for leaning in LEANINGS if tied else LOOSE_LEANINGS:
        found = _forward(work, room, leaning)
        if found is not None:
            return found
        if same and tied:
            turned = _forward(Work(work.minutes, work.after), room, leaning)
            if turned is not None:
                used = max(turned, default=0)
                return tuple(used - session for session in turned)
    return None


def _forward(work: Work, room: Sequence[int], leaning: tuple[int, int, bool]) -> tuple[int, ...] | None:
    by_minutes, by_following, heaviest = leaning
    following = work.following()
    weight = [by_minutes * own + by_following * whole for own, whole in zip(work.minutes, following, strict=True)]
    session = [-1] * len(work.minutes)
    left = sum(work.minutes)
    for number, there in enumerate(room):
        if -1 not in session:
            break
        if left > sum(room[number:]):
            return None
        best = _Filling(work, weight, session, there, heaviest).best()
        for step in best:
            session[step] = number
            left -= work.minutes[step]
    return None if -1 in session else tuple(session)


class _Filling:
    """The heaviest set of ready steps that fits one session, found by looking at a bounded number of sets."""

    def __init__(self, work: Work, weight: list[int], session: list[int], there: int, heaviest: bool) -> None:
        self.work, self.weight, self.session, self.there = work, weight, session, there
        self.after = work.after
        self.waiting = [sum(session[one] < 0 for one in ahead) for ahead in work.before]
        self.found: tuple[int, ...] = ()
        self.found_weight = -1
        self.nodes = 0
        self.heaviest = heaviest

    def best(self) -> tuple[int, ...]:
        ready = [step for step, count in enumerate(self.waiting) if count == 0 and self.session[step] < 0]
        ready.sort(key=self._order)
        if self.heaviest and ready:
            self._take(ready[0], [], ready[1:], 0, 0)
        else:
            self._look([], ready, 0, 0)
        return self.found

    def _order(self, step: int) -> tuple[int, int]:
        return (-self.weight[step], step)

    def _look(self, taken: list[int], ready: list[int], minutes: int, weight: int) -> None:
        self.nodes += 1
        if weight > self.found_weight:
            self.found, self.found_weight = tuple(taken), weight
        last: tuple[int, int] | None = None
        for index, step in enumerate(ready):
            if self.nodes > NODES or (minutes == self.there and self.work.minutes[step]):
                return
            alike = (self.work.minutes[step], self.weight[step])
            if minutes + self.work.minutes[step] > self.there or (alike == last and not self.after[step]):
                continue
            last = alike if not self.after[step] else None
            self._take(step, taken, ready[index + 1 :], minutes, weight)

    def _take(self, step: int, taken: list[int], rest: list[int], minutes: int, weight: int) -> None:
        if minutes + self.work.minutes[step] > self.there:
            return
        more = list(rest)
        for other in self.after[step]:
            self.waiting[other] -= 1
            if self.waiting[other] == 0:
                more.append(other)
        more.sort(key=self._order)
        taken.append(step)
        self._look(taken, more, minutes + self.work.minutes[step], weight + self.weight[step])
        taken.pop()
        for other in self.after[step]:
            self.waiting[other] += 1
