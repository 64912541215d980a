"""What became of a plan since it was made: what it cost and took, what came on, what fell off, and the facts behind."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date
from typing import Literal

FactKind = Literal[
    "dearer",
    "cheaper",
    "price",
    "sold out",
    "returned",
    "delivery",
    "longer",
    "quicker",
    "gone",
    "late",
    "more money",
    "less money",
    "more hours",
    "fewer hours",
    "catalog",
    "survey",
    "brief",
    "faults",
    "instead",
    "gives way",
    "freed",
    "pace",
    "no time",
    "no money",
    "neither",
]
MONEY: tuple[FactKind, ...] = ("dearer", "price", "delivery", "returned", "less money")
HOURS: tuple[FactKind, ...] = ("longer", "gone", "late", "fewer hours", "pace")
LACKS: dict[FactKind, tuple[FactKind, ...]] = {
    "no time": HOURS,
    "no money": MONEY,
    "neither": (*MONEY, *HOURS),
}
"""What is lacking, and the facts that may be behind it."""


GROWING: tuple[FactKind, ...] = ("dearer", "cheaper", "longer", "quicker")
LASTING: tuple[FactKind, ...] = (*GROWING, "sold out", "returned", "delivery", "pace")
"""Facts of what is settled: true of every later plan as well."""
Known = tuple[tuple[str, str, int], ...]


@dataclass(frozen=True, slots=True)
class Fact:
    """One thing that came out otherwise than planned. `amount`: minor units or minutes, never below 0.

    Of a pace: hundredths of the usual minutes.
    """

    kind: FactKind
    name: str = ""
    amount: int = 0


def known_of(facts: Iterable[Fact]) -> Known:
    """What a plan's workbook keeps of the facts that it was made with: those that stay true of what is settled."""
    return tuple(sorted((fact.kind, fact.name, fact.amount) for fact in facts if fact.kind in LASTING))


def fresh(facts: Iterable[Fact], known: Known) -> tuple[Fact, ...]:
    """The facts that are new since then, sums and minutes by as much as they grew; a pace that changed whole."""
    before: dict[tuple[str, str], int] = {}
    for kind, name, amount in known:
        before[kind, name] = before.get((kind, name), 0) + amount
    found = []
    for fact in facts:
        old = before.get((fact.kind, fact.name))
        if old is None:
            found.append(fact)
        elif fact.kind == "pace":
            found += [fact] if fact.amount != old else []
        elif fact.kind in GROWING:
            before[fact.kind, fact.name] = max(0, old - fact.amount)
            found += [replace(fact, amount=fact.amount - old)] if fact.amount > old else []
    return tuple(found)


def largest_first(facts: Iterable[Fact]) -> tuple[Fact, ...]:
    """Money before hours, the largest first; a pace, which bears on all work, before minutes; days of delay last."""
    order = {"pace": 0, "late": 2}
    return tuple(
        sorted(
            facts, key=lambda fact: (fact.kind in HOURS, order.get(fact.kind, 1), -fact.amount, fact.kind, fact.name)
        )
    )


@dataclass(frozen=True, slots=True)
class Shift:
    """Remedies that came on, or fell off, for one reason; `why` None: no single fact explains it."""

    names: tuple[str, ...]
    why: Fact | None = None


@dataclass(frozen=True, slots=True)
class Since:
    """Sums in minor units, minutes as person-minutes. `due_minor`: what all that is paid was planned at.

    `unused`: (name, last day to give it back) of what was bought and is not used. `unended`: begun, and not to be
    ended in what is left. `sessions_left`, `minutes_left`: None without a list of hours.
    """

    day: date
    paid_minor: int = 0
    due_minor: int = 0
    over_budget_minor: int = 0
    steps_done: int = 0
    steps: int = 0
    took_minutes: int = 0
    planned_minutes: int = 0
    sessions_left: int | None = None
    minutes_left: int | None = None
    off: tuple[Shift, ...] = ()
    on: tuple[Shift, ...] = ()
    facts: tuple[Fact, ...] = ()
    unused: tuple[tuple[str, date | None], ...] = ()
    unended: tuple[str, ...] = ()
    told: bool = False
