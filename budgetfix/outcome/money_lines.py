"""Lines of money as lists show them: which can be ticked, and the names by which ticks are told apart."""

from __future__ import annotations

from collections.abc import Iterable

from budgetfix.outcome.book import MoneyLine

ON_TOP = ("delivery", "tax")
"""Lines that come with the others."""
NOT_BOUGHT = ("labour", "fixed", *ON_TOP)
"""Lines of money that nobody brings home from a shop: not ticked, and not counted as bought."""


def line_ids(money: Iterable[MoneyLine], taken: Iterable[str] = ()) -> list[str]:
    """A name for each line, the same in every plan that has it; of lines alike the later ones are numbered.

    `taken`: names of lines that were carried on from an earlier plan and keep them.
    """
    used = set(taken)
    ids = []
    for line in money:
        id = f"{line.kind}:{line.product or line.name}" + (f"@{line.shop}" if line.shop else "")
        ids.append(_free(id, used))
        used.add(ids[-1])
    return ids


def _free(id: str, used: set[str]) -> str:
    name, number = id, 1
    while name in used:
        number += 1
        name = f"{id}#{number}"
    return name
