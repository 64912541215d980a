"""A problem looked at once: options by id, who excludes whom, who can do what when."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import combinations, permutations
from typing import TypeVar

from budgetfix.optimize.problem import Instalment, Option, Problem, Product, Session, Step, Tool
from budgetfix.optimize.setting_up import setups, wholes

DAY = 24 * 60
Person = TypeVar("Person", int, str)
Crew = tuple[int, ...]
"""People of one step, as places in `Problem.people`."""


def ending(step: Step, crew: Sequence[Person]) -> Sequence[Person]:
    """Those of a crew who are still at it when the step ends: a helper is gone by then."""
    return crew[:1] if step.help else crew


@dataclass(frozen=True)
class Facts:
    """The options that can be chosen, by id, and the sessions that may be used (`horizon` of them).

    `horizon` 0: nothing is placed, because there is no list of hours or no session in it.
    """

    problem: Problem
    options: tuple[Option, ...]
    horizon: int

    @classmethod
    def of(cls, problem: Problem, without: Iterable[str] = ()) -> Facts:
        """All options but some, sorted by id."""
        gone = frozenset(without)
        kept = sorted((one for one in problem.options if one.id not in gone), key=lambda one: one.id)
        horizon = len(problem.sessions or ())
        if problem.last_session is not None:
            horizon = min(horizon, problem.last_session + 1)
        return cls(problem, tuple(kept), max(0, horizon))

    def only(self, ids: Iterable[str]) -> Facts:
        """The same problem with some of the options."""
        kept = frozenset(ids)
        return Facts(self.problem, tuple(one for one in self.options if one.id in kept), self.horizon)

    def within(self, horizon: int) -> Facts:
        """The same problem with fewer sessions."""
        return replace(self, horizon=horizon)

    @cached_property
    def by_id(self) -> dict[str, Option]:
        return {one.id: one for one in self.options}

    @cached_property
    def unplaced(self) -> Facts:
        """The same problem where nothing is placed."""
        return self.within(0)

    @property
    def long_steps(self) -> bool:
        """True where a step takes more than half a session on average: totals promise what no timetable keeps."""
        steps = [step.minutes for one in self.options for step in one.steps if step.minutes]
        there = [minutes for row in self.minutes for minutes in row if minutes]
        return bool(steps and there) and 2 * sum(steps) * len(there) > sum(there) * len(steps)

    @cached_property
    def needs(self) -> dict[str, tuple[str, ...]]:
        """What each option needs, as far as it is among the options."""
        return {one.id: tuple(sorted(id for id in set(one.needs) if id in self.by_id)) for one in self.options}

    @cached_property
    def against(self) -> dict[str, frozenset[str]]:
        """What cannot be chosen beside each option: its group and its excludes, both ways."""
        found: dict[str, set[str]] = {one.id: set() for one in self.options}
        groups: dict[str, list[str]] = {}
        for one in self.options:
            if one.group is not None:
                groups.setdefault(one.group, []).append(one.id)
            for other in one.excludes:
                if other in found and other != one.id:
                    found[one.id].add(other)
                    found[other].add(one.id)
        for members in groups.values():
            for id in members:
                found[id].update(members)
        return {id: frozenset(others - {id}) for id, others in found.items()}

    @cached_property
    def sessions(self) -> tuple[Session, ...]:
        return (self.problem.sessions or ())[: self.horizon]

    @cached_property
    def minutes(self) -> tuple[tuple[int, ...], ...]:
        """Minutes of work of each session and person: setting up is paid as soon as there is any work at all."""
        return tuple(
            tuple(max(0, there - setup) for there in session.minutes)
            for session, setup in zip(self.sessions, setups(self.problem), strict=False)
        )

    @cached_property
    def days(self) -> tuple[int, ...]:
        """For each session the day on which it begins, from day 0."""
        return tuple(session.start_minute // DAY for session in self.sessions)

    @cached_property
    def whole(self) -> tuple[int, ...]:
        """For each session the number of the one that it is a part of, from 0."""
        return wholes(self.sessions)

    @cached_property
    def _crews(self) -> dict[tuple[object, ...], tuple[Crew, ...]]:
        return {}

    def crews(self, step: Step) -> tuple[Crew, ...]:
        """Who could do a step, in the order of the people."""
        key = (step.people, step.barred, step.help > 0, step.no_help)
        if key not in self._crews:
            names = self.problem.people
            able = [place for place, name in enumerate(names) if name not in step.barred]
            pairs = permutations(range(len(names)), 2)
            self._crews[key] = (
                tuple(pair for pair in pairs if pair[0] in able and names[pair[1]] not in step.no_help)
                if step.help
                else tuple(combinations(able, step.people))
            )
        return self._crews[key]

    def fitting(self, step: Step, session: int) -> tuple[Crew, ...]:
        """Crews that have the minutes for a step in a session; none for a loud step in a quiet one."""
        if self.hushed(step, session):
            return ()
        there = self.minutes[session]
        return tuple(
            crew
            for crew in self.crews(step)
            if all(there[one] >= step.minutes_in(place) for place, one in enumerate(crew))
        )

    def hushed(self, step: Step, session: int) -> bool:
        """True where a step is too loud for a session."""
        return step.loud and self.sessions[session].quiet

    def may_share(self, before: Step, step: Step) -> bool:
        """Whether some crew of a step lies within those who end the one before: else it takes a later session."""
        return any(set(crew) <= set(ending(before, first)) for first in self.crews(before) for crew in self.crews(step))

    def next_session(self, before: Step, step: Step, session: int) -> int:
        """The first session for a step whose predecessor stands in `session`; `horizon` when there is none.

        A wait in minutes counts from the end of that session.
        """
        least = session + (0 if self.may_share(before, step) else 1)
        if step.wait_sessions > 0:
            due = self.whole[session] + step.wait_sessions
            least = max(least, next((t for t, number in enumerate(self.whole) if number >= due), self.horizon))
        if step.wait_minutes <= 0:
            return min(least, self.horizon)
        ready = self.sessions[session].end_minute + step.wait_minutes
        later = range(max(least, session + 1), self.horizon)
        return next((one for one in later if self.sessions[one].start_minute >= ready), self.horizon)

    def before_first(self, id: str) -> tuple[Step, ...]:
        """The last steps of what an option needs."""
        return tuple(self.by_id[need].steps[-1] for need in self.needs[id] if self.by_id[need].steps)

    @cached_property
    def products(self) -> dict[str, Product]:
        return {one.id: one for one in self.problem.products}

    @cached_property
    def tools(self) -> dict[str, Tool]:
        """Tools that are not owned and that an option lists."""
        listed = {tool for one in self.options for tool in one.tools}
        return {
            one.id: one
            for one in sorted(self.problem.tools, key=lambda one: one.id)
            if one.id in listed and not one.owned
        }

    @cached_property
    def hirable(self) -> dict[str, int]:
        """Tools for which hiring can be cheaper than buying, and for how many sessions at most."""
        found: dict[str, int] = {}
        for id, tool in self.tools.items():
            if not tool.for_hire:
                continue
            most = max(1, len({*self.whole, *tool.held}))
            if self.phases:
                found[id] = most
                continue
            if tool.hire_minor is None:
                most = min(most, tool.prepaid)
            elif tool.buy_minor is not None and tool.hire_minor > 0:
                most = min(most, tool.prepaid + max(0, tool.buy_minor - 1) // tool.hire_minor)
            if tool.buy_minor is not None and tool.hire_minor == 0 and tool.buy_minor == 0 and not tool.prepaid:
                most = 0
            if most:
                found[id] = most
        return found

    @cached_property
    def phases(self) -> tuple[Instalment, ...]:
        """Phases of money; none without sessions."""
        return self.problem.phases if self.problem.sessions else ()

    @cached_property
    def last_phases(self) -> dict[str, int]:
        """For each option that is bought in a phase, the last one in which it can be bought and still be in time."""
        end = len(self.problem.sessions or ())
        end = end if self.problem.last_session is None else min(end, self.problem.last_session + 1)
        return {
            one.id: max((phase for phase, first in enumerate(one.arrivals) if first < end), default=0)
            for one in self.options
            if self.phases and one.arrivals
        }

    def bought_late(self) -> Facts:
        """The same problem where everything waits for the last phase in which it can be bought."""
        return replace(
            self,
            options=tuple(
                replace(one, first_session=one.arrivals[self.last_phases[one.id]])
                if one.id in self.last_phases
                else one
                for one in self.options
            ),
        )

    def phase_of(self, session: int) -> int:
        """The phase whose money is there in a session."""
        return max(place for place, one in enumerate(self.phases) if one.first_session <= session)

    def users(self, tool: str) -> tuple[Option, ...]:
        return tuple(one for one in self.options if tool in one.tools)


def with_needs(facts: Facts, id: str) -> frozenset[str]:
    """An option with all that it needs."""
    seen: set[str] = set()
    stack = [id]
    while stack:
        one = stack.pop()
        if one in facts.by_id and one not in seen:
            seen.add(one)
            stack.extend(facts.needs[one])
    return frozenset(seen)
