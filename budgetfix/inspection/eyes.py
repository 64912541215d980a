"""The same findings in the eyes of one person, whose priorities come on top of the household's."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction

from budgetfix.brief.models import Person
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.inspect import shared_out


def points_to(person: Person, findings: Iterable[Finding], *, hazards_too: bool = False) -> int:
    """The points of the findings as this person weighs them; shares and rounding as always.

    Hazards weigh the same for everybody. They are left out, or counted in where `hazards_too`.
    """
    weighed = (
        finding if finding.safety else replace(finding, raw=finding.raw * _priority(person, finding))
        for finding in findings
        if hazards_too or not finding.safety
    )
    return sum(finding.points for finding in shared_out(weighed))


def _priority(person: Person, finding: Finding) -> Fraction:
    names = (finding.rule, finding.family, finding.subject)
    return person.priority(*(name for name in names if name is not None))
