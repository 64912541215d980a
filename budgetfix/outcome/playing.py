"""A plan played out draw by draw: what stands in which session when steps take other minutes than planned.

What a draw does, in plain words. Sessions come one after the other. Each person has the hours as typed, before `load`,
less setting up once a session. In a session the list is worked in its order: what was put off comes first, in the
order in which it stood, then what is planned for the session, in the order of the task list. A step is begun if
everybody of its crew has the minutes left that it will take (a helper gives as large a part of it as planned), if what
comes before it is done (its own earlier step, the last step of what its remedy needs, with waits in sessions and hours
kept, and in the same session only where its crew was at the earlier one too), if its goods are there, if it is not too
loud for a quiet session, and if a room that is never left half done is not left so. Else it is put off to the next
session in which it can stand; what finds none falls off. Nothing is brought forward, nobody is exchanged, and clock
times within a session are not played.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from budgetfix.brief.models import Brief
from budgetfix.optimize.facts import Facts, ending
from budgetfix.optimize.problem import Option, Placed, Plan, Problem
from budgetfix.outcome.order import predecessors
from budgetfix.outcome.tasks import first_round

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from budgetfix.outcome.draws import Figures

    Flags = NDArray[np.bool_]
    Places = NDArray[np.int16]

HAIR = 1e-9
"""Minutes that are no minutes: what arithmetic leaves over."""


@dataclass(frozen=True)
class Turn:
    """One step on the list. `session` is where it is planned, from 0; `minutes` are planned clock minutes."""

    option: str
    step: int
    session: int
    people: tuple[str, ...]
    minutes: int
    help: int = 0

    def part(self, place: int) -> float:
        """How much of the step the person at a place of the crew is there for."""
        if not (self.help and place):
            return 1.0
        return self.help / self.minutes if self.minutes else 0.0


@dataclass(frozen=True)
class Played:
    """`stands`: the session of each turn (row) in each draw (column), `never` where it fell off.

    `over`: for each session (row), whether something is put off at its end.
    """

    stands: Places
    over: Flags
    never: int


def facts_of(problem: Problem, brief: Brief, chosen: Iterable[str]) -> Facts:
    """The chosen options in the sessions as they are really there: minutes as typed, before `load`."""
    rows = zip(problem.sessions or (), brief.hours or (), strict=True)
    there = tuple(replace(session, minutes=hours.typed_minutes) for session, hours in rows)
    return Facts.of(replace(problem, sessions=there)).only(chosen)


def fetched(problem: Problem, plan: Plan) -> Problem:
    """The problem in which goods need the first round that the plan runs for them, where money comes by date."""
    buys = dict(plan.buys)
    return replace(problem, options=tuple(_fetched(one, plan, buys) for one in problem.options))


def _fetched(option: Option, plan: Plan, buys: Mapping[str, int]) -> Option:
    if not option.rounds or option.id not in plan.chosen:
        return option
    rounds = (first_round(plan, wanted[buys[option.id] :]) for wanted in option.rounds)
    return replace(option, needs=(*option.needs, *rounds), rounds=())


def played(facts: Facts, turns: Sequence[Turn], minutes: Figures) -> Played:
    """All draws at once. `turns` in the order of the list, sessions in order; a row of `minutes` for each."""
    return _Playing(facts, tuple(turns), minutes).all()


class _Playing:
    """The state of all draws while sessions go by."""

    def __init__(self, facts: Facts, turns: tuple[Turn, ...], minutes: Figures) -> None:
        import numpy as np

        self.facts, self.turns, self.minutes = facts, turns, minutes
        self.never = facts.horizon
        self.stands: Places = np.full(minutes.shape, self.never, dtype=np.int16)
        self.row = {(turn.option, turn.step): at for at, turn in enumerate(turns)}
        self.places = {name: at for at, name in enumerate(facts.problem.people)}
        self.gates = [self._gates(turn) for turn in turns]

    def all(self) -> Played:
        """Every session in order."""
        import numpy as np

        over = np.zeros((self.never, self.minutes.shape[1]), dtype=bool)
        for session in range(self.never):
            here = [at for at, turn in enumerate(self.turns) if turn.session <= session]
            left = np.repeat(np.array(self.facts.minutes[session], dtype=float)[:, None], self.minutes.shape[1], axis=1)
            for at in here:
                if self._may_stand(self.turns[at], session):
                    self._turn(at, session, left)
                over[session] |= self.stands[at] == self.never
        return Played(self.stands, over, self.never)

    def _turn(self, at: int, session: int, left: Figures) -> None:
        """One step begun in all draws in which it can be."""
        begun: Flags = self.stands[at] == self.never
        if not begun.any():
            return
        for row, gate in self.gates[at]:
            begun &= gate[self.stands[row], session]
        asked = [(self.places[name], self.turns[at].part(place)) for place, name in enumerate(self.turns[at].people)]
        for person, part in asked:
            begun &= left[person] + HAIR >= self.minutes[at] * part
        for person, part in asked:
            left[person] -= self.minutes[at] * part * begun
        self.stands[at][begun] = session

    def _may_stand(self, turn: Turn, session: int) -> bool:
        """Goods are there, it is not too late, and not too loud."""
        option = self.facts.by_id[turn.option]
        step = option.steps[turn.step]
        last = self.never - 1 if option.last_session is None else option.last_session
        first = max(option.first_session, step.first_session)
        return first <= session <= last and not self.facts.hushed(step, session)

    def _gates(self, turn: Turn) -> list[tuple[int, Flags]]:
        """For all that comes before a turn: its row, and a table (session there, session here) of what is allowed."""
        by_id = self.facts.by_id
        last = {id: len(option.steps) - 1 for id, option in by_id.items()}
        keys = predecessors(turn.option, turn.step, self.facts.needs[turn.option], last)
        return [(self.row[key], self._gate(self.turns[self.row[key]], turn)) for key in keys if key in self.row]

    def _gate(self, before: Turn, turn: Turn) -> Flags:
        import numpy as np

        facts, option = self.facts, self.facts.by_id[turn.option]
        earlier, step = facts.by_id[before.option].steps[before.step], option.steps[turn.step]
        together = set(turn.people) <= set(ending(earlier, before.people))
        one_day = option.one_day and before.option == turn.option
        allowed = np.zeros((self.never + 1, self.never), dtype=bool)
        for there in range(self.never):
            ready = max(facts.next_session(earlier, step, there), there + (0 if together else 1))
            for here in range(ready, self.never):
                allowed[there, here] = not one_day or facts.days[here] == facts.days[there]
        return allowed


def turns_of(
    facts: Facts, placed: Mapping[tuple[str, int], Placed], keys: Iterable[tuple[str, int]]
) -> tuple[Turn, ...]:
    """The steps that have a session, by (option, step from 0) in working order."""
    found = []
    for id, index in keys:
        one, step = placed[id, index], facts.by_id[id].steps[index]
        if one.session is not None:
            found.append(Turn(id, index, one.session, one.people, step.minutes, step.help))
    return tuple(found)
