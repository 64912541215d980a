"""The rule book and the kinds, for the command line."""

from __future__ import annotations

from budgetfix.exports.lines import WIDTH, wrapped
from budgetfix.exports.plan_json import rules_object
from budgetfix.inspection.registry import RULES
from budgetfix.inspection.words import page
from budgetfix.remedies.kind import kind_page
from budgetfix.remedies.registry import KINDS


def page_of(slug: str) -> str | None:
    """The manual page of a rule or a kind; None when there is none."""
    for rule in RULES:
        if rule.slug == slug:
            return paragraphs(page(rule))
    for kind in KINDS:
        if kind.kind == slug:
            return paragraphs(kind_page(kind))
    return None


def paragraphs(text: str) -> str:
    """Text of at most 79 columns: a paragraph with a longer line is broken anew, the others stay as they are."""
    parts = []
    for part in text.split("\n\n"):
        lines = part.split("\n")
        fits = all(len(line) <= WIDTH for line in lines)
        prose = len(lines) == 1 or any(line[-1:] not in (".", "}") for line in lines)
        broken = wrapped(" ".join(lines)) if prose else [piece for line in lines for piece in wrapped(line, 2)]
        parts.append("\n".join(lines if fits else broken))
    return "\n\n".join(parts)


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
