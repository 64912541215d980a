"""Small plans made by chance: waits, needs, quiet sessions, two people, helpers, cut sessions, rooms of one day."""

from __future__ import annotations

from random import Random

from budgetfix.brief.models import Brief, Hours, Person
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.problem import Option, Problem, Session, Step
from budgetfix.outcome.playing import Turn, facts_of
from tests.outcome.replayed import Household, Piece

PEOPLE = ("ann", "ben")


class World:
    """One plan as the tool sees it (`facts`, `turns`) and as the second coding does (`home`, `pieces`)."""

    def __init__(self, seed: int) -> None:
        self.random = Random(seed)
        self.sessions = self._sessions()
        self.options = tuple(self._option(number) for number in range(self.random.randint(2, 5)))
        self.pieces = self._pieces()
        self.last = self.random.choice((None, None, len(self.sessions) - 1))
        self.setup = self.random.choice((0, 0, 10, 25))
        problem = Problem(
            self.options, people=PEOPLE, sessions=self.sessions, setup_minutes=self.setup, last_session=self.last
        )
        hours = tuple(
            Hours(
                minutes=tuple(one // 2 for one in session.minutes), day=0, length_minutes=0, before_load=session.minutes
            )
            for session in self.sessions
        )
        brief = Brief(hours=hours, people=tuple(Person(name=name) for name in PEOPLE))
        self.facts: Facts = facts_of(problem, brief, [one.id for one in self.options])
        self.turns = tuple(
            Turn(one.option, one.step, one.session, one.people, one.minutes, one.help) for one in self.pieces
        )
        self.home = Household(PEOPLE, self.sessions, {one.id: one for one in self.options}, self.setup, self.last)

    def _sessions(self) -> tuple[Session, ...]:
        start = 9 * 60
        found: list[Session] = []
        for number in range(self.random.randint(1, 4)):
            length = self.random.choice((60, 90, 120, 180))
            minutes = (length, self.random.choice((0, length // 2, length)))
            joined = number > 0 and self.random.random() < 0.2
            start = found[-1].end_minute if joined else start
            found.append(Session(start, start + length, minutes, self.random.random() < 0.25, joined))
            start += self.random.choice((length + 30, 1440, 1440))
        return tuple(found)

    def _option(self, number: int) -> Option:
        random = self.random
        steps = tuple(self._step() for _ in range(random.randint(0 if number else 1, 3)))
        needs = tuple(f"o{other}" for other in range(number) if random.random() < 0.3)
        return Option(
            f"o{number}",
            steps=steps,
            needs=needs,
            first_session=random.choice((0, 0, 0, 1)),
            last_session=random.choice((None, None, None, len(self.sessions) - 1)),
            one_day=random.random() < 0.2,
        )

    def _step(self) -> Step:
        random = self.random
        people = random.choice((1, 1, 2))
        minutes = random.randint(5, 70)
        return Step(
            minutes,
            people,
            wait_sessions=random.choice((0, 0, 0, 1)),
            wait_minutes=random.choice((0, 0, 0, 60, 600)),
            loud=random.random() < 0.3,
            first_session=random.choice((0, 0, 0, 1)),
            help=random.randint(1, minutes) if people == 1 and random.random() < 0.3 else 0,
        )

    def _pieces(self) -> tuple[Piece, ...]:
        """Every step somewhere, what comes before first; rather too early than too late."""
        found, at = [], 0
        for option in self.options:
            for index, step in enumerate(option.steps):
                at = min(len(self.sessions) - 1, at + self.random.choice((0, 0, 0, 1)))
                crew = PEOPLE if step.hands == 2 else (self.random.choice(PEOPLE),)
                low, high = step.minutes * self.random.uniform(0.4, 1), step.minutes * self.random.uniform(1, 2.5)
                figures = self.random.choice(((low, step.minutes, high), (step.minutes,) * 3))
                found.append(Piece(option.id, index, at, crew, tuple(map(float, figures)), step.minutes, step.help))  # type: ignore[arg-type]
        return tuple(found)
