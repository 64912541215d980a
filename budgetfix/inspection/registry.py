"""Every rule, written out by hand: a rule that is not named here does not exist."""

from __future__ import annotations

from budgetfix.inspection.rule import Rule

RULES: tuple[Rule, ...] = ()
"""All rules, section by section."""
