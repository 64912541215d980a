"""A place in the sessions for every step of one chosen set: by rules first, by the solver where they fail."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from typing import Literal

from budgetfix.optimize.buying import billed
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.listing import listed, unplaced
from budgetfix.optimize.model import placing
from budgetfix.optimize.money_rows import b, v
from budgetfix.optimize.place_rows import Kind
from budgetfix.optimize.problem import Placed
from budgetfix.optimize.recount import Bill, SolverDisagrees, bill
from budgetfix.optimize.solver import Engine, run


@dataclass(frozen=True, slots=True)
class Placing:
    """A set in its sessions, with the bill that comes of it."""

    placed: tuple[Placed, ...]
    bill: Bill

    @property
    def last(self) -> int:
        """The last session used; -1 where none is."""
        return max((one.session for one in self.placed if one.session is not None), default=-1)


Unplaceable = Literal["no", "unknown"]
Hands = Mapping[str, int]
"""Tools as paid for: sessions of hire by tool, -1 for bought."""


@dataclass
class Placer:
    """Places sets and remembers what it found. `seconds_left` bounds each try."""

    facts: Facts
    seconds_left: Callable[[], float]
    engine: Engine = "highs"
    _known: dict[tuple[frozenset[str], int], list[Placing]] = field(default_factory=dict)
    _failed: dict[tuple[frozenset[str], int], int | None] = field(default_factory=dict)

    def quick(self, chosen: frozenset[str], horizon: int, ceiling: int | None) -> Placing | None:
        """By rules only."""
        for known in self._known.get((chosen, horizon), []):
            if ceiling is None or known.bill.spent_minor <= ceiling:
                return known
        facts = self.facts.only(chosen).within(horizon)
        for tried in (facts, facts.bought_late()) if facts.phases else (facts,):
            found = listed(tried)
            cost = None if found is None else billed(facts, chosen, found, self.engine)
            if found is None or cost is None:
                continue
            made = Placing(found, cost)
            self._known.setdefault((chosen, horizon), []).append(made)
            if ceiling is None or made.bill.spent_minor <= ceiling:
                return made
        return None

    def place(self, chosen: frozenset[str], horizon: int, ceiling: int | None) -> Placing | Unplaceable:
        """A placing that costs no more than `ceiling`; "no" is proven."""
        key = (chosen, horizon)
        if key in self._failed and _within(ceiling, self._failed[key]):
            return "no"
        found = self.quick(chosen, horizon, ceiling)
        if found is not None:
            return found
        facts = self.facts.only(chosen).within(horizon)
        rest = 0 if facts.phases else bill(facts, chosen, ()).spent_minor - _tools(facts, chosen)
        made = self._solve(facts, None if ceiling is None else ceiling - rest, {})
        if made == "no":
            self._failed[key] = ceiling
        if isinstance(made, str):
            return made
        cost = billed(facts, chosen, made, self.engine)
        if cost is None:
            raise SolverDisagrees(f"{sorted(chosen)} cannot be bought as it was placed")
        placed = Placing(made, cost)
        self._known.setdefault(key, []).append(placed)
        return placed

    def can(self, chosen: frozenset[str], horizon: int, hands: Hands) -> bool | None:
        """Whether a set can be placed with these tools paid for (others without end); None: unknown."""
        facts = self.facts.only(chosen).within(horizon)
        if not hands and self.quick(chosen, horizon, None) is not None:
            return True
        made = self._solve(facts, None, hands)
        return None if made == "unknown" else made != "no"

    def _solve(self, facts: Facts, ceiling: int | None, hands: Hands) -> tuple[Placed, ...] | Unplaceable:
        if not facts.horizon:
            fits = ceiling is None or _tools(facts, facts.by_id) <= ceiling
            return unplaced(facts) if fits else "no"
        program, kinds = placing(facts, ceiling)
        for tool, count in hands.items():
            if b(tool) in program.variables:
                program.fix(b(tool), int(count < 0))
            for number in range(1, facts.hirable.get(tool, 0) + 1):
                program.fix(v(tool, number), int(number <= count))
        solved = run(program, (), self.seconds_left(), self.engine)
        if solved.status == "infeasible":
            return "no"
        return "unknown" if solved.values is None else given_out(facts, kinds, solved.values)


def _within(ceiling: int | None, failed: int | None) -> bool:
    """Whether a try with less or as much money as failed before needs no second look."""
    return failed is None or (ceiling is not None and ceiling <= failed)


def _tools(facts: Facts, chosen: Iterable[str]) -> int:
    """Least money for the tools of a set, each hired for one session or bought."""
    listed_tools = {tool for id in chosen for tool in facts.by_id[id].tools if tool in facts.tools}
    return sum(facts.tools[id].least_minor or 0 for id in sorted(listed_tools))


def given_out(facts: Facts, kinds: Iterable[Kind], values: Mapping[str, float]) -> tuple[Placed, ...]:
    """Counts given out to the chosen options of each kind, first in, first out."""
    people = facts.problem.people
    found: list[Placed] = []
    for kind in kinds:
        ids = [id for id in kind.ids if values[f"x[{id}]"] > 0.5]
        for index, cells in enumerate(kind.cells):
            places = [(t, crew) for t, crew, name in cells for _ in range(round(values[name]))]
            for id, (t, crew) in zip(ids, sorted(places), strict=True):
                found.append(Placed(id, index, t, tuple(people[one] for one in crew)))
    return tuple(sorted(found, key=lambda one: (one.option, one.step)))
