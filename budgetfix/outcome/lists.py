"""The lists of one plan, as people read them."""

from __future__ import annotations

from dataclasses import dataclass

from budgetfix.outcome.book import FaultRow, MoneyLine, SessionRow, Task


@dataclass(frozen=True)
class Lists:
    """What one plan buys, does and leaves, in the words that people read."""

    money: tuple[MoneyLine, ...]
    tasks: tuple[Task, ...]
    sessions: tuple[SessionRow, ...] | None
    faults: tuple[FaultRow, ...]
