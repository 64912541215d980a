"""The rules as they hold for one brief: which are on, by which band, in which block."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from budgetfix.brief.models import BandChange, Brief
from budgetfix.inspection.judging import blocks, judges, merged
from budgetfix.inspection.look import Look
from budgetfix.inspection.registry import RULES
from budgetfix.inspection.rule import Band, Rule
from tests.inspection.rooms import renter

PLAIN = replace(
    RULES[0],
    safety=False,
    off=False,
    family=None,
    weight=Fraction(3),
    profiles={"listing": Fraction(1, 2), "handing-back": Fraction(0)},
    bands={"listing": Band(low=5.0)},
    band=Band(10.0, 20.0, 4.0, 40.0, (12.0, 18.0)),
)


def rule(slug: str, **more: object) -> Rule:
    """A rule that is on, without a family, with a weight of 3: half of it for a listing, nothing for handing back."""
    return replace(PLAIN, slug=slug, **more)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("sound", "glaring", "edges"),
    [
        (None, None, (10.0, 20.0, 4.0, 40.0)),
        ((11.0, None), None, (11.0, None, 4.0, 40.0)),
        (None, (1.0, 50.0), (10.0, 20.0, 1.0, 50.0)),
        ((11.0, 19.0), (None, 50.0), (11.0, 19.0, None, 50.0)),
    ],
)
def test_a_band_of_the_brief_overrides_side_by_side(
    sound: tuple[float | None, float | None] | None,
    glaring: tuple[float | None, float | None] | None,
    edges: tuple[float | None, ...],
) -> None:
    """What is sound and what is glaring are changed apart; what a remedy aims at stays the rule's."""
    change = BandChange(rule="r", sound=sound, glaring=glaring)
    found = merged(PLAIN.band, change)
    assert (found.low, found.high, found.bad_low, found.bad_high) == edges
    assert found.aim == (12.0, 18.0)
    (judge,) = judges([rule("r")], Brief(bands=(change,)))
    assert (judge.band, judge.fixed) == (found, sound is not None or glaring is not None)


def test_without_a_change_the_rule_stands() -> None:
    """Its own band, or the profile's, and nothing is fixed by the brief."""
    (judge,) = judges([rule("r")], Brief())
    assert (judge.band, judge.weight, judge.fixed) == (PLAIN.band, Fraction(3), False)
    (judge,) = judges([rule("r")], Brief(profile="listing"))
    assert (judge.band, judge.weight) == (Band(low=5.0), Fraction(3, 2))


@pytest.mark.parametrize(
    ("off", "switch", "on"), [(False, None, True), (True, None, False), (False, False, False), (True, True, True)]
)
def test_rules_are_switched_by_the_brief(off: bool, switch: bool | None, on: bool) -> None:
    """On unless the rule is off by itself; the brief's word counts for more."""
    changes = () if switch is None else (BandChange(rule="r", switch=switch),)
    assert bool(judges([rule("r", off=off)], Brief(bands=changes))) is on
    elsewhere = BandChange(rule="other", switch=True)
    assert bool(judges([rule("r", off=off)], Brief(bands=(elsewhere,)))) is not off


def test_a_profile_weighs_looks_and_never_safety() -> None:
    """What a profile gives no weight is off there; a safety rule keeps its whole weight in every profile."""
    assert judges([rule("r")], Brief(profile="handing-back")) == ()
    (judge,) = judges([rule("r", safety=True)], Brief(profile="handing-back"))
    assert judge.weight == 3


def test_blocks_are_rooms_times_families() -> None:
    """One block for a family, one for a rule alone, one for each safety rule, in each room, by name."""
    some = judges(
        [rule("c"), rule("b", family="walls"), rule("a", family="walls"), rule("d", family="walls", safety=True)],
        Brief(),
    )
    found = blocks(("kitchen", "bath"), some)
    assert [(one.room, one.name, [judge.rule.slug for judge in one.judges]) for one in found] == [
        (room, name, slugs)
        for room in ("kitchen", "bath")
        for name, slugs in (("c", ["c"]), ("d", ["d"]), ("walls", ["a", "b"]))
    ]


def test_what_was_guessed() -> None:
    """One of the figures asked about was filled in by a default; another figure or another thing was not."""
    survey = renter().model_copy(update={"guessed": frozenset({("sofa", "depth")})})
    look = Look(survey, "r")
    assert look.guessed("sofa", "width", "depth")
    assert not look.guessed("sofa", "width")
    assert not look.guessed("table", "depth")
    assert not look.guessed("sofa")
