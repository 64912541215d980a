"""The rule book and the kinds, for the command line."""

from __future__ import annotations

from budgetfix.exports.lines import WIDTH, wrapped
from budgetfix.exports.plan_json import rules_object
from budgetfix.inspection.registry import RULES, SECTIONS
from budgetfix.inspection.rule import Rule
from budgetfix.inspection.words import basis_of, page
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
        broken = [piece for line in lines for piece in wrapped(line, 2)] if _stands(lines) else wrapped(" ".join(lines))
        parts.append("\n".join(lines if fits else broken))
    return "\n\n".join(parts)


def _stands(lines: list[str]) -> bool:
    """True where each line is a statement of its own, not a stretch of prose."""
    return len(lines) > 1 and all(line[-1:] in (".", "}") for line in lines)


def rule_book() -> str:
    """Every page in one Markdown text: contents, the rules section by section as the trade has them, the kinds."""
    parts = [HEAD]
    for title, rules in SECTIONS:
        rows = [f"| [{rule.slug}](#{rule.slug}) | {rule.title} | {_weight(rule)} |" for rule in rules]
        parts.append("\n".join([f"### {title}", "", "| rule | what is off | weight | family |", RULER, *rows]))
    rows = [f"- [{kind.kind}](#{kind.kind}): {kind.name}" for kind in KINDS]
    parts.append("\n".join([f"### {OF_REMEDIES}", "", *rows]))
    for title, rules in SECTIONS:
        parts += [f"# {title}", *(_marked(page(rule)) for rule in rules)]
    parts += [f"# {OF_REMEDIES}", *(_marked(kind_page(kind)) for kind in KINDS)]
    return "\n\n".join(parts) + "\n"


def _weight(rule: Rule) -> str:
    return f"{float(rule.weight):g} | {'S' if rule.safety else rule.family or ''}"


def _marked(text: str) -> str:
    """A page in Markdown: its slug as heading, statements as a list, prose as it is."""
    name, *parts = text.split("\n\n")
    slug, _, title = name.partition(" - ")
    made = [f"## {slug}", f"**{title}**"]
    for part in parts:
        lines = part.split("\n")
        if _stands(lines):
            made.append("\n".join(piece for line in lines for piece in wrapped(f"- {line}", 2)))
        else:
            made.append("\n".join(wrapped(" ".join(lines))))
    return "\n\n".join(made)


RULER = "| --- | --- | --- | --- |"
OF_REMEDIES = "Kinds of remedies"
HEAD = """# The rule book

Made by budgetfix from its own rules: the same pages that `budgetfix rules SLUG` prints.

**Sound** is what a practitioner would let pass; the edges belong to it. **Aim** is what a remedy is sized to.
**Glaring** is severity 1: severity rises in a straight line from the sound edge to the glaring limit, and goes on
rising to 3. Points are 100 x severity x weight. Within a family on one subject the worst finding counts whole, each
other a third; the same rule on several subjects counts 1, 2/3, 1/3. Safety (S) has no family and is counted apart.
Published rows are named with their source; all else is common practice. The brief may change any band, or switch any
rule off; local codes, your lease and licensed trades come first.

## Contents"""


def rules_objects(slug: str | None) -> list[object]:
    """`rules --json`: all rules, or one; `source` names in full what `basis` names by row."""
    chosen = [rule for rule in RULES if slug in (None, rule.slug)]
    made = zip(rules_object(chosen), chosen, strict=True)
    return [{**one, "source": basis_of(rule)} for one, rule in made]


def rules_text() -> str:
    """Every rule, a line each, section by section as the trade has them."""
    lines = [f"{len(RULES)} rules. One page each: budgetfix rules SLUG"]
    for title, rules in SECTIONS:
        lines += ["", title, *(f"  {rule.slug:<28}{_cut(rule.title, 48)}" for rule in rules)]
    return "\n".join(lines)


def kinds_text() -> str:
    """Every kind of remedy, a line each."""
    lines = [f"  {kind.kind:<28}{_cut(kind.name, 48)}" for kind in KINDS]
    return "\n".join([f"{len(KINDS)} kinds of remedies. One page each: budgetfix rules KIND", "", *lines])


def _cut(text: str, width: int) -> str:
    return text if len(text) <= width else text[: width - 1] + "…"
