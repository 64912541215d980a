"""What a block comes to, and what the tape can tell."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from budgetfix.brief.models import Brief
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.inspect import Seen, _left_with, judge_one, look_at, shared_out
from budgetfix.inspection.judging import Judge, blocks, judges
from budgetfix.inspection.look import Look
from budgetfix.inspection.registry import RULES
from budgetfix.inspection.rule import Band, Measured
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


def judged(measured: Measured) -> Finding:
    """The finding of a rule that measures this: sound from 1,000 mm on, glaring at 500."""
    rule = replace(RULES[0], slug="r", unit="mm", band=Band(low=1000.0, bad_low=500.0), measure=lambda *_: measured)
    found = judge_one(Judge(rule, rule.band, Fraction(1)), Look(renter(), "r"), "sofa", Brief())
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("measured", "certain"),
    [
        (Measured(1006.0, give=5.0), True),
        (Measured(1004.0, give=5.0), False),
        (Measured(1004.0), True),
        (Measured(996.0, give=5.0), False),
        (Measured(994.0, give=5.0), True),
        (Measured(1006.0, give=5.0, uncertain=True), False),
        (Measured(1006.0, uncertain=True), False),
        (Measured(1004.0, give=5.0, severity=Fraction(1)), True),
    ],
)
def test_what_the_tape_can_tell(measured: Measured, certain: bool) -> None:
    """Sound from 1,000 mm on: within what the tape may be off nobody knows, nor where a figure was guessed."""
    assert judged(measured).certain is certain


def test_one_rule_on_several_subjects() -> None:
    """Worst first: whole, two thirds, a third, and a third of each further one; another rule starts whole again."""
    plain = replace(judged(Measured(600.0)), family=None)
    several = [replace(plain, rule="r", subject=name, raw=Fraction(90)) for name in "abcd"]
    shared = shared_out([*several, replace(plain, rule="s", subject="a", raw=Fraction(90))])
    assert [(one.rule, one.subject, one.points) for one in shared] == [
        ("r", "a", 90), ("r", "b", 60), ("r", "c", 30), ("r", "d", 30), ("s", "a", 90),
    ]  # fmt: skip
    walls = shared_out(replace(one, rule=one.subject, family="walls", family_scope="w") for one in several)
    assert [one.points for one in walls] == [90, 30, 30, 30]


@pytest.mark.parametrize(
    ("gone_cures", "name", "cured"), [(True, "sofa", True), (True, "rug", False), (False, "sofa", False)]
)
def test_a_fault_that_leaves_with_its_thing(gone_cures: bool, name: str, cured: bool) -> None:
    """Only where the thing itself was the hazard, and only with that very thing."""
    old = judged(Measured(600.0))
    rule = replace(RULES[0], slug="r", gone_cures=gone_cures)
    item = next(one for one in renter().furniture if one.name == "sofa").model_copy(update={"name": name})
    assert _left_with(old, (("furniture", item),), {"r": Judge(rule, rule.band, Fraction(1))}) is cured
