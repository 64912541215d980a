"""What a block comes to: hazard points and points are told apart."""

from __future__ import annotations

from budgetfix.brief.models import Brief
from budgetfix.inspection.inspect import Seen, look_at
from budgetfix.inspection.judging import blocks, judges
from budgetfix.inspection.registry import RULES
from tests.inspection.rooms import renter


def test_hazards_and_looks_are_summed_apart() -> None:
    """Over the renter's room each finding counts once, as a hazard or as a matter of looks."""
    brief = Brief()
    seen = [look_at(block, renter(), brief) for block in blocks(("r",), judges(RULES, brief))]
    findings = [finding for one in seen for finding in one.findings]
    hazards = {finding.rule: finding.points for finding in findings if finding.safety and finding.points}
    looks = {finding.rule: finding.points for finding in findings if not finding.safety and finding.points}
    assert hazards
    assert looks
    whole = Seen(tuple(findings), ())
    assert (whole.hazards, whole.points) == (sum(one.hazards for one in seen), sum(one.points for one in seen))
    assert whole.hazards == sum(finding.points for finding in findings if finding.rule in hazards)
    assert whole.points == sum(finding.points for finding in findings if finding.rule in looks)
    assert whole.hazards + whole.points == sum(finding.points for finding in findings)
