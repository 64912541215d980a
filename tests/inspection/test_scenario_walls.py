"""The three invented rooms' walls: each fault put there on purpose is named, and what was right is let pass."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pytest

from budgetfix.brief.models import BandChange, Brief
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.inspect import look_at
from budgetfix.inspection.judging import blocks, judges
from budgetfix.inspection.registry import RULES
from budgetfix.room.survey import Survey
from tests.inspection.rooms import seen
from tests.inspection.wall_rooms import couple_walls, renter_walls, stager_walls

FAMILIES = ("screen", "window dressing", "picture group")
SAFE_ON_WALLS = ("screen-feet-overhang", "screen-loose", "juts-into-route", "heavy-over-head")
WALLS = tuple(rule for rule in RULES if rule.family in FAMILIES or rule.slug in SAFE_ON_WALLS)
INCH = 25.4


def findings(survey: Survey, brief: Brief | None = None) -> dict[str, Finding]:
    """Every finding about screens, windows and pictures, by id."""
    brief = brief or Brief()
    found: dict[str, Finding] = {}
    for block in blocks(["r"], judges(WALLS, brief)):
        found |= {one.id: one for one in look_at(block, survey, brief).findings}
    return found


def faults(survey: Survey) -> list[str]:
    """The ids of all faults, sorted."""
    return sorted(name for name, one in findings(survey).items() if one.fault)


RENTER = [
    "art-off-height/art", "art-out-of-level/desk left", "art-too-small/art", "console-flank-flat/tv",
    "console-too-narrow/tv", "hem-off-floor/win", "panels-skimpy/win", "rod-hung-low/win", "rod-too-narrow/win",
    "screen-loose/tv",
]  # fmt: skip
STAGER = [
    "art-gaps-uneven/family photos", "art-gaps-wide/family photos", "art-off-height/family photos",
    "art-out-of-level/family photos", "art-too-small/family photos", "hem-off-floor/win-1", "hem-off-floor/win-2",
    "rod-hung-low/win-1", "rod-hung-low/win-2", "rod-too-narrow/win-1", "rod-too-narrow/win-2",
    "rods-out-of-line/wall C", "screen-off-eye-level/tv", "screen-too-near-or-far/tv",
]  # fmt: skip
COUPLE = [
    "art-gaps-uneven/frames", "art-gaps-wide/frames", "art-off-height/frames", "art-out-of-level/frames",
    "console-flank-flat/tv", "console-too-narrow/tv", "rod-hung-low/win-dining", "rod-hung-low/win-front",
    "rod-too-narrow/win-dining", "rod-too-narrow/win-front", "rods-out-of-line/wall D", "screen-loose/tv",
]  # fmt: skip


@pytest.mark.parametrize(("built", "wanted"), [(renter_walls, RENTER), (stager_walls, STAGER), (couple_walls, COUPLE)])
def test_what_a_practitioner_names_and_nothing_else(built: Callable[[], Survey], wanted: list[str]) -> None:
    """Every fault at the walls that was put there on purpose, and only what goes with it."""
    assert faults(built()) == wanted


def test_the_renters_low_screen_is_sound() -> None:
    """A set on a low bench, its middle 816 up before a 430 seat, is let pass."""
    found = findings(renter_walls())["screen-off-eye-level/tv"]
    assert found.severity == 0
    assert found.value == pytest.approx(815.5, abs=1)


def test_one_wide_pair_on_a_higher_rod_cures_the_window() -> None:
    """The renter's right answer: the same rod with a pair of 2 x 2000, hemmed to 10 mm."""
    fields = {"rod_height": 2390.0, "rod_from_left": 560.0, "rod_width": 2280.0, "panel_width": 2000.0, "hem": 10.0}
    after = seen(renter_walls(), "curtain", **fields, stack=None)
    assert [name for name in faults(after) if name.endswith("/win")] == []


def test_for_a_listing_screens_fall_silent_and_windows_weigh_more() -> None:
    """The listing profile: no screen rules but the strap, window rules times one and a half."""
    listing, living = findings(stager_walls(), Brief(profile="listing")), findings(stager_walls())
    assert [name for name in listing if name.startswith("screen-") and "loose" not in name and "feet" not in name] == []
    name = "rods-out-of-line/wall C"
    assert listing[name].raw == living[name].raw * Fraction(3, 2)


def test_a_band_in_the_brief_reaches_only_its_own_measure() -> None:
    """Middles at 57 to 60 in: the photographs over the sofa are still judged by their gap."""
    change = BandChange(rule="art-off-height", sound=(57 * INCH, 60 * INCH))
    living, wish = findings(stager_walls()), findings(stager_walls(), Brief(bands=(change,)))
    assert wish["art-off-height/family photos"] == living["art-off-height/family photos"]
    bare = seen(renter_walls(), "art", over="", bottom=1215.0)
    assert findings(bare)["art-off-height/art"].severity == 0
    assert findings(bare, Brief(bands=(change,)))["art-off-height/art"].severity > 0


def test_readings_at_the_edge_are_not_certain() -> None:
    """Frames 25 out of level by two readings of 5 each may be 15, which is sound; 65 between two rods is certain."""
    assert not findings(renter_walls())["art-out-of-level/desk left"].certain
    assert findings(couple_walls())["rods-out-of-line/wall D"].certain
    assert not findings(seen(renter_walls(), "sofa", seat=None))["screen-off-eye-level/tv"].certain
