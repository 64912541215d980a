"""Lines of money as lists show them: which can be ticked, and the names by which ticks are told apart."""

from __future__ import annotations

from collections.abc import Iterable

from budgetfix.outcome.book import MoneyLine

ON_TOP = ("delivery", "tax")
"""Lines that come with the others."""
NOT_BOUGHT = ("labour", "fixed", *ON_TOP)
"""Lines of money that nobody brings home from a shop: not ticked, and not counted as bought."""


def line_ids(money: Iterable[MoneyLine]) -> list[str]:
    """A name for each line, the same in every plan that has it; of lines alike the later ones are numbered."""
    seen: dict[str, int] = {}
    ids = []
    for line in money:
        id = f"{line.kind}:{line.product or line.name}" + (f"@{line.shop}" if line.shop else "")
        seen[id] = seen.get(id, 0) + 1
        ids.append(id if seen[id] == 1 else f"{id}#{seen[id]}")
    return ids
