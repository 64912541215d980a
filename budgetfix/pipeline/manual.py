"""The rule book and the kinds, for the command line."""

from __future__ import annotations

from budgetfix.exports.plan_json import rules_object
from budgetfix.inspection.registry import RULES
from budgetfix.inspection.words import page
from budgetfix.remedies.kind import kind_page
from budgetfix.remedies.registry import KINDS


def page_of(slug: str) -> str | None:
    """The manual page of a rule or a kind; None when there is none."""
    for rule in RULES:
        if rule.slug == slug:
            return page(rule)
    for kind in KINDS:
        if kind.kind == slug:
            return kind_page(kind)
    return None


def rules_objects(slug: str | None) -> list[object]:
    """`rules --json`: all rules, or one."""
    return list(rules_object(tuple(rule for rule in RULES if slug in (None, rule.slug))))


def rules_text() -> str:
    """Every rule, a line each, in the order of the trade's sections."""
    lines = [f"  {rule.slug:<28}{_cut(rule.title, 48)}" for rule in RULES]
    return "\n".join([f"{len(RULES)} rules. One page each: budgetfix rules SLUG", "", *lines])


def kinds_text() -> str:
    """Every kind of remedy, a line each."""
    lines = [f"  {kind.kind:<28}{_cut(kind.name, 48)}" for kind in KINDS]
    return "\n".join([f"{len(KINDS)} kinds of remedies. One page each: budgetfix rules KIND", "", *lines])


def _cut(text: str, width: int) -> str:
    return text if len(text) <= width else text[: width - 1] + "…"
