"""How many sessions the steps of one option need at least: waits keep them apart."""

from __future__ import annotations

from itertools import pairwise

from budgetfix.optimize.facts import Facts
from budgetfix.optimize.problem import Option


def least_sessions(facts: Facts, option: Option) -> int:
    """Whole sessions that hold a step of the option in every placing, at least 1 (also where nothing is placed)."""
    if not facts.horizon:
        return 1
    parts = len(set(facts.whole)) < facts.horizon
    apart = [
        step.wait_sessions > 0 or (not parts and (step.wait_minutes > 0 or not facts.may_share(before, step)))
        for before, step in pairwise(option.steps)
    ]
    return 1 + sum(apart)
