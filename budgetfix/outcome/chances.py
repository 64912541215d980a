"""How likely it is that all of a plan fits, told after the fact: the plan is played out many times (`playing`).

Chances play no part in choosing. The figures that people type for low, likely and high are guesses, so what comes of
them is said in tenths; and all of them under one common factor (`draws`), never as if they were independent.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cached_property
from typing import TYPE_CHECKING

from budgetfix.base.three_point import rule_mean, rule_sd, sd_of_sum
from budgetfix.framing.frame import Framed, Ground
from budgetfix.framing.options import ERRAND
from budgetfix.optimize.problem import Plan
from budgetfix.outcome.book import Task
from budgetfix.outcome.draws import SEED_MINUTES, drawn
from budgetfix.outcome.odds import DRAWS, NEARLY, Chances, FallsOff, InTime, Spread
from budgetfix.outcome.playing import Played, Turn, facts_of, fetched, played, turns_of
from budgetfix.outcome.price_odds import price_odds
from budgetfix.outcome.worth import Worth

if TYPE_CHECKING:
    from budgetfix.optimize.facts import Facts
    from budgetfix.outcome.playing import Flags

EXACT_SETS = 150
"""Sets of fallen remedies, the most frequent ones, that are looked at whole; for the rare rest single worths add up."""
WORST = 10
"""The worst tenth."""


def chances(base: Ground, framed: Framed, plan: Plan, tasks: Sequence[Task], worth: Worth) -> Chances:
    """What can be told of the chances of a checked plan. `tasks` are its steps in working order."""
    timed = tuple(task for task in tasks if task.step)
    unsure = sum(task.low < task.high for task in timed)
    told = Chances(len(timed), len(timed) - unsure, money=price_odds(base, framed, plan))
    if not unsure:
        return told
    told = replace(told, work=spread(timed))
    if not base.brief.hours:
        return told
    game = Game.of(base, framed, plan, timed)
    points = _Points(game, worth)
    mean, worst = points.reached()
    return replace(
        told,
        fits=int((~game.fallen.any(axis=0)).sum()),
        falls=points.falls(),
        sessions=tuple(points.in_time(session) for session in sorted({turn.session for turn in game.turns})),
        reached=mean,
        reached_worst=worst,
    )


def spread(tasks: Sequence[Task]) -> Spread:
    """All work together: the mean by the three-point rule, one standard deviation to either side, in person-minutes."""
    shares = [task.people + (task.help_minutes / task.minutes if task.minutes else 0) for task in tasks]
    mean = sum(rule_mean(task.low, task.likely, task.high) * share for task, share in zip(tasks, shares, strict=True))
    sd = sd_of_sum(rule_sd(task.low, task.high) * share for task, share in zip(tasks, shares, strict=True))
    return Spread(sum(task.person_minutes for task in tasks), math.floor(mean - sd + 0.5), math.floor(mean + sd + 0.5))


@dataclass(frozen=True)
class Game:
    """One plan, played out: `fallen` has a row a remedy (of `ids`) and a column a draw."""

    base: Ground
    framed: Framed
    facts: Facts
    turns: tuple[Turn, ...]
    played: Played
    ids: tuple[str, ...]

    @classmethod
    def of(cls, base: Ground, framed: Framed, plan: Plan, tasks: Sequence[Task]) -> Game:
        """Every step of the plan takes its turn in every draw."""
        placed = {(one.option, one.step): one for one in plan.placed}
        facts = facts_of(fetched(framed.problem, plan), base.brief, plan.chosen)
        keys = [(task.candidate, task.step - 1) for task in tasks]
        turns = turns_of(facts, placed, keys)
        figures = {key: (task.low, task.likely, task.high) for key, task in zip(keys, tasks, strict=True)}
        named = sorted(figures)
        row = {key: at for at, key in enumerate(named)}
        minutes = drawn([figures[key] for key in named], SEED_MINUTES)
        mine = minutes[[row[turn.option, turn.step] for turn in turns]]
        ids = tuple(id for id in sorted(plan.chosen) if not id.startswith(ERRAND))
        return cls(base, framed, facts, turns, played(facts, turns, mine), ids)

    @cached_property
    def fallen(self) -> Flags:
        """Remedies with a step that finds no session, or that need one which is not done."""
        import numpy as np

        off = {id: np.zeros(DRAWS, dtype=bool) for id in self.facts.by_id}
        for turn, stands in zip(self.turns, self.played.stands, strict=True):
            off[turn.option] |= stands == self.played.never
        for _ in off:
            for id, needs in self.facts.needs.items():
                for need in needs:
                    off[id] |= off[need]
        return np.array([off[id] for id in self.ids], dtype=bool).reshape(len(self.ids), DRAWS)

    def may_be_left(self, id: str) -> bool:
        """Whether nothing else needs a remedy, and the brief does not ask for it."""
        brief, one = self.base.brief, self.framed.candidates[id]
        asked = not brief.must_all and not {one.id, one.pick_one}.isdisjoint(brief.must)
        return not asked and not any(id in needs for needs in self.facts.needs.values())

    def minutes_from(self, id: str, session: int) -> int:
        """Person-minutes of a remedy from a session on."""
        steps = self.facts.by_id[id].steps
        mine = [turn for turn in self.turns if turn.option == id and turn.session >= session]
        return sum(steps[turn.step].person_minutes for turn in mine)


@dataclass(frozen=True)
class _Points:
    """What falls off, in points: by the same inspections that the chooser asked for."""

    game: Game
    worth: Worth

    @cached_property
    def each(self) -> dict[str, int]:
        """Points of each remedy, as it alone is missing."""
        return {id: self.worth.of(id, self.game.ids) for id in self.game.ids}

    def falls(self) -> tuple[FallsOff, ...]:
        """What falls off at all, most often first."""
        names = self.game.framed.candidates
        times = zip(self.game.ids, self.game.fallen.sum(axis=1), strict=True)
        found = [FallsOff(id, names[id].name, int(count), self.each[id]) for id, count in times if count]
        return tuple(sorted(found, key=lambda one: (-one.times, one.id)))

    def in_time(self, session: int) -> InTime:
        """How often a session (from 0) ends with nothing put off, and what to leave first."""
        times = DRAWS - int(self.game.played.over[session].sum())
        here = sorted({turn.option for turn in self.game.turns if turn.session == session} & set(self.game.ids))
        saved = {id: self.game.minutes_from(id, session) for id in here if self.game.may_be_left(id)}
        open_ = [id for id in here if saved.get(id, 0) > 0]
        if times > NEARLY or not open_:
            return InTime(session + 1, times)
        least = min(open_, key=lambda id: (Fraction(self.each[id], saved[id]), id))
        return InTime(session + 1, times, self.game.framed.candidates[least].name, self.each[least], saved[least])

    def reached(self) -> tuple[int | None, int | None]:
        """Per cent of the planned improvement, hazard points counted in: the mean, and what nine in ten draws reach."""
        whole = self.worth.gain((), self.game.ids)
        if whole <= 0:
            return None, None
        lost = self._lost()
        total = sum(points * count for points, count in lost.items())
        mean = 100 - Fraction(100 * total, whole * DRAWS)
        worst = 100 - Fraction(100 * _tenth(lost), whole)
        return math.floor(mean), math.floor(worst)

    def _lost(self) -> Counter[int]:
        """Draws by the points that are lost in them."""
        sets = Counter(map(bytes, self.game.fallen.T.copy()))
        found: Counter[int] = Counter()
        for rank, (flags, count) in enumerate(sorted(sets.items(), key=lambda one: (-one[1], one[0]))):
            gone = {id for id, flag in zip(self.game.ids, flags, strict=True) if flag}
            found[self._without(gone) if rank < EXACT_SETS else sum(self.each[id] for id in gone)] += count
        return found

    def _without(self, gone: set[str]) -> int:
        return self.worth.gain(set(self.game.ids) - gone, self.game.ids) if gone else 0


def _tenth(lost: Counter[int]) -> int:
    """The least loss that is among the worst tenth of all draws."""
    left = DRAWS // WORST
    for points in sorted(lost, reverse=True):
        left -= lost[points]
        if left <= 0:
            return points
    return 0
