"""The right plan the slow way: every subset in every placing, from the job files alone.

A subset is skipped only where even the least that it could cost and the earliest that it could end would not help it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from itertools import combinations

from tests.proof.job_files import Job, Remedy, Step
from tests.proof.promises import (
    Key,
    before,
    bill,
    crews,
    earliest,
    errands_for,
    kept,
    latest,
    left,
    may_follow,
    money,
    session_problems,
    set_problems,
    staying,
    work_in,
    worth,
)
from tests.proof.van_files import wholes

Places = dict[Key, int]
Where = dict[Key, tuple[int, tuple[str, ...]]]
LOUD = {"drill", "hammer", "saw"}
DAY = 24 * 60


@dataclass(frozen=True)
class Best:
    """The one best plan. `places`: (remedy or errand, step, session from 0) in order; none without sessions."""

    chosen: tuple[str, ...]
    hazards: int
    points: int
    spent: int
    minutes: int
    last: int
    places: tuple[tuple[str, int, int], ...]


@dataclass(frozen=True)
class Some:
    """One subset that keeps every promise but hours and money. `least`: what it costs at least."""

    ids: tuple[str, ...]
    hazards: int
    points: int
    least: int
    minutes: int
    flags: tuple[bool, ...]

    def key(self, job: Job, spent: int, last: int, *, spend_first: bool) -> tuple[object, ...]:
        """The order of wishes for the set; smaller is better."""
        total = (self.hazards, self.points) if job.hazards_first else (self.hazards + self.points,)
        if job.must == ("all",):
            order = (spent, last) if spend_first else (last, spent)
            return (*order, *total, self.minutes, self.flags)
        if spend_first:
            return (spent, *total, self.minutes, last, self.flags)
        return (*total, spent, self.minutes, last, self.flags)


def subsets(job: Job) -> Iterator[Some]:
    """Every set that keeps groups, needs, excludes, musts and limits, and whose tools can be had."""
    ids = sorted(kept(job))
    for size in range(len(ids) + 1):
        for some in combinations(ids, size):
            lines = bill(job, some, {}) if not any(set_problems(job, some)) else None
            if lines is not None and _hands(job, some):
                minutes = sum(job.remedies[id].minutes for id in some)
                minutes += sum(job.errands[id].minutes for id in errands_for(job, some))
                flags = tuple(id not in some for id in ids)
                yield Some(some, *worth(job, some), sum(line[5] for line in lines), minutes, flags)


def _hands(job: Job, ids: Iterable[str]) -> bool:
    return all(crews(job, one, step) for one in _work(job, ids) for step in one.steps)


def _work(job: Job, ids: Iterable[str]) -> list[Remedy]:
    chosen = sorted(ids)
    return [job.remedies[id] for id in chosen] + [job.errands[id] for id in errands_for(job, chosen)]


def _same_day(job: Job, key: Key, there: Places, session: int) -> bool:
    """Nothing is left half done overnight, where the brief asks for that."""
    sessions = job.sessions or ()
    begun = there.get((key[0], 0), session)
    return not job.whole_days or sessions[begun].start // DAY == sessions[session].start // DAY


@dataclass
class Placer:
    """Every way to put the steps of one set into sessions."""

    job: Job
    some: Some

    def __post_init__(self) -> None:
        self.everyone = {one.id: one for one in _work(self.job, self.some.ids)}
        self.steps: dict[Key, Step] = {}
        waiting = sorted(self.everyone)
        while waiting:
            id = next(one for one in waiting if self._fetched(one, waiting))
            self.steps |= {(id, at): step for at, step in enumerate(self.everyone[id].steps)}
            waiting.remove(id)
        self.before = {key: before(self.job, key, self.some.ids) for key in self.steps}
        self.room = [sum(session.minutes.values()) for session in self.job.sessions or ()]

    def _fetched(self, id: str, waiting: list[str]) -> bool:
        needs = [] if id in self.job.errands else [*self.job.remedies[id].needs, *errands_for(self.job, [id])]
        return not set(needs) & set(waiting)

    def places(self) -> Iterator[Places]:
        """Sessions for every step that keep waits, goods, quiet and the last day; crews are not looked at yet."""
        yield from self._next(list(self.steps), {}, list(self.room))

    def _next(self, keys: list[Key], there: Places, room: list[int]) -> Iterator[Places]:
        if not keys:
            yield dict(there)
            return
        key, step = keys[0], self.steps[keys[0]]
        hushed = bool(LOUD & set(self.everyone[key[0]].tools))
        one = self.everyone[key[0]]
        for session in range(earliest(self.job, one, step), latest(self.job, one) + 1):
            work = step.minutes * step.people + step.help
            quiet = (self.job.sessions or ())[session].quiet and hushed
            if quiet or room[session] < work or not _same_day(self.job, key, there, session):
                continue
            if all(may_follow(self.job, step, there[one], session) for one in self.before[key]):
                there[key] = session
                room[session] -= work
                yield from self._next(keys[1:], there, room)
                room[session] += work
                del there[key]

    def manned(self, places: Places) -> bool:
        """True where crews can be found: hours kept, and in one session nobody joins who was not there before."""
        return self._crew(list(self.steps), places, {})

    def _crew(self, keys: list[Key], places: Places, where: Where) -> bool:
        if not keys:
            return True
        key, session = keys[0], places[keys[0]]
        for crew in crews(self.job, self.everyone[key[0]], self.steps[key]):
            same = [staying(self.steps[one], where[one][1]) for one in self.before[key] if places[one] == session]
            if all(set(crew) <= set(one) for one in same):
                where[key] = (session, crew)
                if not any(session_problems(self.job, where, session)) and self._crew(keys[1:], places, where):
                    return True
                del where[key]
        return False

    def days(self, places: Places) -> dict[str, int]:
        """Sessions in which each tool is in use."""
        found: dict[str, set[int]] = {}
        for (id, _), session in places.items():
            for tool in self.everyone[id].tools:
                found.setdefault(tool, set()).add(wholes(self.job.sessions or ())[session])
        return {tool: len(sessions) for tool, sessions in found.items()}

    def early(self, places: Places) -> tuple[object, ...]:
        """Most worth early, then steps in id order to the earliest session; smaller is better."""
        mine = (self.some.hazards, self.some.points)
        back = {}
        for id in self.some.ids:
            more = worth(self.job, [one for one in self.some.ids if one != id])
            pair = (max(0, more[0] - mine[0]), max(0, more[1] - mine[1]))
            back[id] = pair if self.job.hazards_first else (0, max(0, sum(more) - sum(mine)))
        totals = []
        for session in range(self.job.last or 0):
            ends = {id: places[id, len(one.steps) - 1] for id, one in self.everyone.items() if one.steps}
            done = [back[id] for id, end in ends.items() if end <= session and id in back]
            totals.append((-sum(one[0] for one in done), -sum(one[1] for one in done)))
        return (tuple(totals), tuple(places[key] for key in sorted(places)))


def best_plan(
    job: Job,
    allowed: Callable[[Some], bool] = lambda _: True,
    *,
    spend_first: bool = False,
    ceiling: int | None = None,
) -> Best | None:
    """The best plan among the sets `allowed`, with at most `ceiling` spent; None where no plan keeps every wish."""
    most = min((one for one in (ceiling, money(job)) if one is not None), default=None)
    sets = [some for some in subsets(job) if allowed(some)]
    sets.sort(key=lambda some: some.key(job, some.least, -1, spend_first=spend_first))
    found: tuple[tuple[object, ...], Best] | None = None
    for some in sets:
        if most is not None and some.least > most:
            continue
        if found is not None and some.key(job, some.least, -1, spend_first=spend_first) > found[0]:
            continue
        found = _placed(job, some, most, found, spend_first)
    return None if found is None else found[1]


def _placed(
    job: Job, some: Some, most: int | None, found: tuple[tuple[object, ...], Best] | None, spend_first: bool
) -> tuple[tuple[object, ...], Best] | None:
    placer = Placer(job, some)
    for places in placer.places() if job.sessions is not None else [{}]:
        spent = sum(line[5] for line in bill(job, some.ids, placer.days(places)) or ())
        if most is not None and spent > most:
            continue
        last = max(places.values(), default=-1)
        key = some.key(job, spent, last, spend_first=spend_first)
        if found is not None and key > found[0][: len(key)]:
            continue
        key = (*key, *placer.early(places)) if job.sessions is not None else key
        if (found is None or key < found[0]) and (job.sessions is None or placer.manned(places)):
            where = tuple((*one, places[one]) for one in sorted(places))
            found = key, Best(some.ids, some.hazards, some.points, spent, some.minutes, last, where)
    return found


def recommended(job: Job, best: Best) -> Best | None:
    """The least spend with the best plan's hazards gone and at least nine tenths of its improvement."""
    start = worth(job, ())[1]
    gained = start - best.points
    least = -(-gained * 9 // 10) if gained > 0 else gained
    good = lambda some: some.hazards <= best.hazards and start - some.points >= least  # noqa: E731
    return best_plan(job, good, spend_first=True)


def free(job: Job) -> Best | None:
    """The best plan with nothing spent."""
    return best_plan(job, ceiling=0)


__all__ = ["Best", "best_plan", "free", "left", "recommended", "work_in"]
