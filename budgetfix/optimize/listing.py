"""A timetable by plain rules: session by session, the most pressing step first. Fast, and often enough.

What it finds is a placing; that it finds none says nothing.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

from budgetfix.optimize.facts import Crew, Facts, ending
from budgetfix.optimize.packing import Work, packed
from budgetfix.optimize.problem import Option, Placed
from budgetfix.optimize.windows import Key, Window, windows

Rule = Callable[[Key], tuple[int, ...]]


def listed(facts: Facts) -> tuple[Placed, ...] | None:
    """All steps of all options in sessions, or None where the rules found no way."""
    if not facts.horizon:
        return unplaced(facts)
    found = windows(facts, facts.by_id)
    if any(first >= facts.horizon or last < first for first, last in found.values()):
        return None
    for rule in _rules(facts, found):
        placed = _Day(facts, rule, found).placed()
        if placed is not None:
            return placed
    return _filled(facts)


def unplaced(facts: Facts) -> tuple[Placed, ...]:
    """All steps without sessions, done by the first who can; nothing where the list of hours is empty."""
    if facts.problem.sessions is not None:
        return ()
    return tuple(
        Placed(one.id, index, None, tuple(facts.problem.people[place] for place in facts.crews(step)[0]))
        for one in facts.options
        for index, step in enumerate(one.steps)
    )


def _rules(facts: Facts, found: dict[Key, Window]) -> tuple[Rule, ...]:
    minutes = {(one.id, index): step.person_minutes for one in facts.options for index, step in enumerate(one.steps)}
    tail = {
        (one.id, index): sum(minutes[one.id, later] for later in range(index, len(one.steps)))
        for one in facts.options
        for index in range(len(one.steps))
    }
    return (
        lambda key: (found[key][1], -minutes[key]),
        lambda key: (-minutes[key], found[key][1]),
        lambda key: (found[key][1] - found[key][0], -tail[key]),
        lambda key: (-tail[key], found[key][1]),
    )


@dataclass
class _Day:
    """One pass over the sessions with one rule."""

    facts: Facts
    rule: Rule
    found: dict[Key, Window]
    left: list[list[int]] = field(init=False)
    joint: list[int] = field(init=False)
    where: dict[Key, tuple[int, Crew]] = field(init=False, default_factory=dict)

    def __post_init__(self) -> None:
        self.left = [list(row) for row in self.facts.minutes]
        self.joint = [max(row, default=0) for row in self.facts.minutes]

    def placed(self) -> tuple[Placed, ...] | None:
        waiting = sorted(
            ((one.id, index) for one in self.facts.options for index in range(len(one.steps))), key=self._key
        )
        for session in range(self.facts.horizon):
            moved = True
            while moved and waiting:
                moved = False
                for key in list(waiting):
                    crew = self._crew(key, session)
                    if crew is not None:
                        self._put(key, session, crew)
                        waiting.remove(key)
                        moved = True
        if waiting:
            return None
        people = self.facts.problem.people
        return tuple(
            Placed(*key, session, tuple(people[one] for one in crew))
            for key, (session, crew) in sorted(self.where.items())
        )

    def _key(self, key: Key) -> tuple[tuple[int, ...], Key]:
        return (self.rule(key), key)

    def _ahead(self, key: Key) -> list[Key]:
        id, index = key
        if index:
            return [(id, index - 1)]
        return [
            (need, len(self.facts.by_id[need].steps) - 1)
            for need in self.facts.needs[id]
            if self.facts.by_id[need].steps
        ]

    def _crew(self, key: Key, session: int) -> Crew | None:
        """Who does a step in a session: the one with most time left, where the step may stand there at all."""
        option = self.facts.by_id[key[0]]
        step = option.steps[key[1]]
        if session < max(option.first_session, step.first_session) or self.facts.hushed(step, session):
            return None
        if option.last_session is not None and session > option.last_session:
            return None
        if option.one_day and not self._on_its_day(key, session):
            return None
        teams: list[Crew] = []
        for ahead in self._ahead(key):
            if ahead not in self.where:
                return None
            before, team = self.where[ahead]
            earlier = self.facts.by_id[ahead[0]].steps[ahead[1]]
            if self.facts.next_session(earlier, step, before) > session:
                return None
            if before == session:
                teams.append(tuple(ending(earlier, team)))
        if len(self.facts.problem.people) > 2 and step.joint_minutes > self.joint[session]:
            return None
        left = self.left[session]
        able = [
            crew
            for crew in self.facts.crews(step)
            if all(left[one] >= step.minutes_in(place) for place, one in enumerate(crew))
            and all(set(crew) <= set(team) for team in teams)
        ]
        return max(able, key=lambda crew: sum(left[one] for one in crew), default=None)

    def _on_its_day(self, key: Key, session: int) -> bool:
        """Whether a step stands where all of its option can stand on one day, and on the day on which that begins."""
        first, last = self.found[key]
        begun = self.where.get((key[0], 0), (session, ()))[0]
        return first <= session <= last and self.facts.days[session] == self.facts.days[begun]

    def _put(self, key: Key, session: int, crew: Crew) -> None:
        step = self.facts.by_id[key[0]].steps[key[1]]
        self.where[key] = (session, crew)
        for place, one in enumerate(crew):
            self.left[session][one] -= step.minutes_in(place)
        self.joint[session] -= step.joint_minutes


def bound(option: Option) -> bool:
    """Whether goods, or a window, keep an option out of some sessions."""
    firsts = (option.first_session, *(step.first_session for step in option.steps))
    return max(firsts) > 0 or option.last_session is not None


def _filled(facts: Facts) -> tuple[Placed, ...] | None:
    """Sessions filled as full as can be, where one person works and nothing waits."""
    steps = [(one, index, step) for one in facts.options for index, step in enumerate(one.steps)]
    simple = all(step.wait_sessions <= 0 and step.wait_minutes <= 0 and not bound(one) for one, _, step in steps)
    whole = any(one.one_day and len(one.steps) > 1 for one in facts.options)
    hushed = any(step.loud for _, _, step in steps) and any(session.quiet for session in facts.sessions)
    if len(facts.problem.people) > 1 or not simple or hushed or whole:
        return None
    number = {(one.id, index): place for place, (one, index, _) in enumerate(steps)}
    before = tuple(
        (number[one.id, index - 1],)
        if index
        else tuple(
            number[need, len(facts.by_id[need].steps) - 1] for need in facts.needs[one.id] if facts.by_id[need].steps
        )
        for one, index, _ in steps
    )
    found = packed(Work(tuple(step.minutes for _, _, step in steps), before), [row[0] for row in facts.minutes])
    if found is None:
        return None
    return tuple(
        Placed(one.id, index, session, (facts.problem.people[0],))
        for (one, index, _), session in zip(steps, found, strict=True)
    )
