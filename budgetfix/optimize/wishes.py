"""The wishes in order, and how a plan measures up to each."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from budgetfix.optimize.facts import Facts
from budgetfix.optimize.placing import Placing
from budgetfix.optimize.problem import Extra, Plan, Problem
from budgetfix.optimize.recount import marks_of, minutes_of

Wish = Literal["hazards", "points", "both", "marks", "spend", "minutes", "last", "first voice", "second voice"]
"""`both`: hazard points and points added up. `marks`: what the chosen leave behind. A voice: points in the eyes of one
of two people.
"""
VOICES: tuple[Wish, ...] = ("first voice", "second voice")
WORTH: tuple[Wish, ...] = ("hazards", "points", "both", *VOICES)
"""Wishes about what remains."""


@dataclass(frozen=True, slots=True)
class Held:
    """A plan in hand: a set with its placing and what remains."""

    chosen: frozenset[str]
    placing: Placing
    hazards: int
    points: int
    minutes: int
    voices: tuple[int, ...] = ()
    marks: int = 0

    def measure(self, wish: Wish) -> int:
        """How much of something there is; less is better for every wish."""
        if wish in VOICES:
            return self.voices[VOICES.index(wish)]
        return {
            "hazards": self.hazards,
            "points": self.points,
            "both": self.hazards + self.points,
            "marks": self.marks,
            "spend": self.placing.bill.spent_minor,
            "minutes": self.minutes,
            "last": self.placing.last,
        }[wish]

    def key(self, facts: Facts, wishes: tuple[Wish, ...]) -> tuple[tuple[int, ...], tuple[bool, ...]]:
        """Smaller is better; of sets alike, the one that holds the smallest id on which they differ."""
        return tuple(map(self.measure, wishes)), tuple(one.id not in self.chosen for one in facts.options)

    def plan(self) -> Plan:
        """The plan as handed out."""
        cost = self.placing.bill
        return Plan(
            chosen=tuple(sorted(self.chosen)),
            placed=tuple(sorted(self.placing.placed, key=lambda one: (one.option, one.step))),
            hazards=self.hazards,
            points=self.points,
            spent_minor=cost.spent_minor,
            person_minutes=self.minutes,
            packs=cost.packs,
            bought=cost.bought,
            hired=cost.hired,
            voices=self.voices,
            buys=cost.buys,
        )


def held(facts: Facts, chosen: frozenset[str], placing: Placing, left: tuple[int, ...]) -> Held:
    """A placed set with what remains: hazard points, points, and the points of each voice."""
    return Held(chosen, placing, left[0], left[1], minutes_of(facts, chosen), left[2:], marks_of(facts.problem, chosen))


def wishes(problem: Problem, extra: Extra) -> tuple[Wish, ...]:
    """The order of wishes; ids come last of all."""
    points: tuple[Wish, ...] = tuple(VOICES[voice] for voice in extra.voices) or ("points",)
    worth: tuple[Wish, ...] = ("hazards", *points) if problem.hazards_first else ("both",)
    worth = worth if problem.hazards_first or not extra.voices else points
    marks: tuple[Wish, ...] = ("marks",) if any(one.marks for one in problem.options) else ()
    usual: tuple[Wish, ...] = (*worth, *marks, "spend", "minutes", "last")
    order: tuple[Wish, ...] = ("last", *marks, "spend", *worth, "minutes") if problem.must_all else usual
    if extra.spend_first:
        order = ("spend", *(wish for wish in order if wish != "spend"))
    return order if problem.sessions else tuple(wish for wish in order if wish != "last")
