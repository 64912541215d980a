"""The same faults in the eyes of one person, against the formula of points worked out by hand."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from budgetfix.brief.models import Person
from budgetfix.inspection.eyes import points_to
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.rule import Band

ROD = Finding(
    rule="rod-too-narrow",
    title="Rod too narrow",
    subject="window",
    room="room",
    value=50.0,
    unit="mm",
    band=Band(low=200, high=None, bad_low=0, bad_high=None),
    severity=Fraction(3, 4),
    raw=Fraction(300),
    certain=True,
    safety=False,
    family="window dressing",
    family_scope="window",
    basis="common practice",
)
HEM = replace(ROD, rule="hem-off-floor", title="Hem off the floor", raw=Fraction(240))
LOOSE = replace(ROD, rule="tall-piece-loose", subject="bookcase", raw=Fraction(500), safety=True, family=None)


def person(**priorities: int | str) -> Person:
    """Somebody with these priorities; names with blanks are written with a low line."""
    named = ((name.replace("_", " "), Fraction(value)) for name, value in priorities.items())
    return Person(name="ann", priorities=tuple(named))


def test_without_a_wish_a_person_sees_what_the_household_sees() -> None:
    """The worst of a family counts whole, the other a third: 300 + 80."""
    assert points_to(person(), (ROD, HEM)) == 380


def test_a_family_that_matters_twice_counts_twice() -> None:
    """Each raw figure is doubled before the shares: 600 + 160."""
    assert points_to(person(window_dressing=2), (ROD, HEM)) == 760


def test_what_matters_more_may_become_the_worst_of_its_family() -> None:
    """With the hem doubled it counts whole, and the rod a third: 480 + 100."""
    findings = (ROD, HEM)
    assert points_to(Person(name="ann", priorities=(("hem-off-floor", Fraction(2)),)), findings) == 580


def test_a_thing_may_be_named_and_what_does_not_matter_is_nothing() -> None:
    """A priority of 0 for the window takes all of it away."""
    assert points_to(person(window=0), (ROD, HEM)) == 0


def test_hazards_weigh_the_same_for_everybody() -> None:
    """They are apart, or counted in as they are; no wish makes a loose bookcase lighter."""
    careless = person(bookcase=0)
    assert points_to(careless, (ROD, LOOSE)) == 300
    assert points_to(careless, (ROD, LOOSE), hazards_too=True) == 800
