"""What everybody pays of a sum that several share: in whole minor units, by largest remainder.

Shared goods are laid on what uses them by the units that each uses; a tool by minutes of work; delivery and tax of a
shop by what each pays for its goods. Each part is rounded down, and the minor units left over go, one each, to the
largest remainders, ties by id. So the parts add up to the sum.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction


def shared_out(amount_minor: int, weights: Mapping[str, Fraction | int]) -> dict[str, int]:
    """The part of each, by id; equal parts where all weights are 0. Errors: ValueError where nobody is there."""
    if not weights:
        raise ValueError("nobody to share it")
    whole = sum(weights.values())
    by = {id: Fraction(weight) for id, weight in weights.items()} if whole else dict.fromkeys(weights, Fraction(1))
    total = sum(by.values())
    exact = {id: amount_minor * weight / total for id, weight in sorted(by.items())}
    parts = {id: int(part) for id, part in exact.items()}
    left = amount_minor - sum(parts.values())
    order = sorted(exact, key=lambda id: (parts[id] - exact[id], id))
    return {id: part + (id in order[:left]) for id, part in parts.items()}
