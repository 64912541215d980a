"""Findings in words: what was measured, what would be sound, and the manual pages."""

from __future__ import annotations

from fractions import Fraction

import pytest

from budgetfix.base.twin import Twin
from budgetfix.brief.models import BandChange, Brief
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.inspect import look_at
from budgetfix.inspection.judging import blocks, judges
from budgetfix.inspection.registry import RULES
from budgetfix.inspection.rule import Band, Rule
from budgetfix.inspection.words import band_words, basis_of, figure, measured_words, page, sound_words
from budgetfix.room.items import Light, Piece
from budgetfix.room.survey import Survey
from tests.inspection.rooms import seen
from tests.inspection.wall_rooms import couple_walls, renter_walls, stager_walls


def findings(survey: Survey, brief: Brief | None = None) -> dict[str, Finding]:
    """Every finding of a room, sound ones too, by id."""
    brief = brief or Brief()
    found: dict[str, Finding] = {}
    for block in blocks(["r"], judges(RULES, brief)):
        found |= {one.id: one for one in look_at(block, survey, brief).findings}
    return found


def words(survey: Survey, name: str) -> tuple[str, str]:
    """(what was measured, what is sound) of one finding, in the survey's unit."""
    finding = findings(survey)[name]
    return measured_words(finding, survey.household.unit), sound_words(finding, survey.household.unit)


def rule(slug: str) -> Rule:
    """A rule by its slug."""
    return next(one for one in RULES if one.slug == slug)


@pytest.mark.parametrize(
    ("name", "measured", "sound"),
    [
        ("rod-too-narrow/win", "50 mm past the frame", "170 mm or more"),
        ("rod-hung-low/win", "60 mm above the frame", "200 mm or more"),
        ("hem-off-floor/win", "70 mm off the floor", "-25 to 20 mm"),
        ("panels-skimpy/win", "1.47 of the rod", "1.50 or more"),
        ("art-too-small/art", "0.24 of the sofa", "0.55 or more"),
        ("art-off-height/art", "600 mm above the sofa", "100 to 250 mm"),
        ("art-off-center/art", "0 mm off the sofa's middle", "50 mm or less"),
        ("console-too-narrow/tv", "105 mm short of the screen", "200 mm or more"),
        ("screen-loose/tv", "not strapped", "strapped"),
        ("screen-too-near-or-far/tv", "2.47 diagonals", "1.20 to 2.50"),
        ("screen-seen-sideways/tv", "9°", "15° or less"),
        ("screen-glare/tv", "90° or more", "30° or more"),
        ("heavy-over-head/art", "2.4 kg, fixing nail", "two screws, or 4 kg at most"),
    ],
)
def test_the_renters_findings_read_like_this(name: str, measured: str, sound: str) -> None:
    """Each finding is a short figure with its place, beside what would be sound."""
    assert words(renter_walls(), name) == (measured, sound)


@pytest.mark.parametrize(
    ("name", "measured", "sound"),
    [
        ("rod-too-narrow/win-1", "1 in past the frame", "7 in or more"),
        ("rods-out-of-line/wall C", "3 in apart", "1/2 in or less"),
        ("hem-off-floor/win-2", "6 in off the floor", "-1 to 3/4 in"),
        ("art-out-of-level/family photos", "1 1/4 in", "1/2 in or less"),
        ("screen-off-eye-level/tv", "72 in", "33 to 45 in"),
    ],
)
def test_the_stagers_findings_are_in_tape_fractions(name: str, measured: str, sound: str) -> None:
    """An inch survey is answered in inches, to the eighth."""
    assert words(stager_walls(), name) == (measured, sound)


def test_below_nothing_is_said_the_other_way_round() -> None:
    """A rod that ends before the frame does is short of it; cloth on the floor lies on it."""
    survey = seen(renter_walls(), "curtain", rod_from_left=1040.0, rod_width=1320.0, hem=-40.0)
    assert words(survey, "rod-too-narrow/win")[0] == "40 mm short of the frame"
    assert words(survey, "hem-off-floor/win")[0] == "40 mm on the floor"
    lower = seen(renter_walls(), "curtain", rod_height=2090.0)
    assert words(lower, "rod-hung-low/win")[0] == "10 mm below the frame"


def test_a_band_from_the_brief_is_the_one_shown() -> None:
    """What the household changed is what it reads, and another measure of the same rule keeps its own band."""
    changes = (
        BandChange(rule="panels-skimpy", sound=(2.0, None), glaring=(1.0, None)),
        BandChange(rule="art-off-height", sound=(1450.0, 1520.0)),
    )
    found = findings(renter_walls(), Brief(bands=changes))
    assert sound_words(found["panels-skimpy/win"], "mm") == "2.00 or more"
    assert sound_words(found["art-off-height/art"], "mm") == "100 to 250 mm"


def test_words_are_short_enough_for_a_column() -> None:
    """No figure of the three rooms' faults is longer than 36 letters, and most fit in 24."""
    shown = [
        measured_words(one, survey.household.unit)
        for survey in (renter_walls(), stager_walls(), couple_walls())
        for one in findings(survey).values()
        if one.fault
    ]
    assert max(len(text) for text in shown) <= 36
    assert sum(len(text) <= 24 for text in shown) > 0.8 * len(shown)


@pytest.mark.parametrize(
    ("band", "unit", "of", "wanted"),
    [
        (Band(low=Twin(8, 200)), "mm", "mm", "200 mm or more"),
        (Band(low=Twin(8, 200)), "mm", "cm", "20 cm or more"),
        (Band(low=Twin(8, 200)), "mm", "in", "8 in or more"),
        (Band(high=0.0), "mm", "mm", "none"),
        (Band(0.55, 0.9), "ratio", "mm", "0.55 to 0.90"),
        (Band(high=15.0), "degree", "mm", "15° or less"),
        (Band(low=120.0), "lm/m2", "mm", "120 lm/m2 or more"),
        (Band(), "mm", "mm", "as the room asks"),
    ],
)
def test_bands_in_words(band: Band, unit: str, of: str, wanted: str) -> None:
    """Open to one side, closed, nothing allowed, or no band at all."""
    assert band_words(band, unit, of) == wanted  # type: ignore[arg-type]


def test_figures_in_words() -> None:
    """Lengths in the survey's unit, ratios to the hundredth, yes and no."""
    assert figure(190.5, "mm", "in") == "7 1/2 in"
    assert figure(0.236, "ratio", "mm") == "0.24"
    assert figure(3.0, "count", "mm") == "3"
    assert (figure(1.0, "yes", "mm"), figure(0.0, "yes", "mm")) == ("yes", "no")


def test_a_page_states_each_band_in_both_units() -> None:
    """A rule with two bands: a line for each, with where it holds; then the reasons, then what the brief may do."""
    lines = page(rule("art-off-height")).splitlines()
    assert lines[0] == "art-off-height - Picture off height"
    assert lines[2] == "Pictures too high or too low."
    assert "Measured: gap over the piece below, or height of the middle." in lines
    assert (
        "Over furniture, the gap. Sound: 4 to 10 in (100 to 250 mm). Aim: 6 to 8 in (150 to 200 mm). "
        "Glaring: 0 and 18 in (0 and 460 mm)."
    ) in lines
    assert (
        "On a bare wall, the middle. Sound: 56 to 62 in (1420 to 1575 mm). Aim: 57 to 60 in (1450 to 1520 mm). "
        "Glaring: 45 and 72 in (1140 and 1830 mm)."
    ) in lines
    assert "Weight 3 of 5; family: picture group. By profile: handing-back off." in lines
    assert "The brief may switch it off: bands: {art-off-height: off}" in lines
    assert "What is taken away keeps its points unless wall-bare passes." in lines


@pytest.mark.parametrize(
    ("slug", "wanted"),
    [
        ("console-too-narrow", ("8 in (200 mm) or more", "12 in (300 mm) or more", "-2 in (-50 mm)")),
        ("lamp-colors-mixed", ("300 K or less", "0", "2000 K")),
        ("door-cannot-open", ("80° or more", "90°", "40°")),
        ("seat-turns-the-neck", ("30° or less", "0", "60°")),
        ("screen-too-near-or-far", ("1.20 to 2.50", "1.20 to 1.60", "0.90 and 3.50")),
        ("surface-crowded", ("5 or fewer", "3 or fewer", "15")),
        (
            "table-off-height",
            ("-4 to 2 in (-100 to 50 mm)", "-2 to 0 in (-50 to 0 mm)", "-9 and 9 in (-230 and 230 mm)"),
        ),
        ("art-gaps-uneven", ("1/2 in (15 mm) or less", "0", "3 in (75 mm)")),
        ("personal-things", ("none", "none", "6")),
        ("rug-misses-seats", ("6 in (150 mm) under every seat's front", "the same", "6 in (150 mm) missing")),
    ],
)
def test_a_page_says_sound_aim_and_glaring(slug: str, wanted: tuple[str, str, str]) -> None:
    """Lengths in both units, other figures once, words where no number would be read."""
    lines = page(rule(slug)).splitlines()
    for name, words in zip(("Sound", "Aim", "Glaring"), wanted, strict=True):
        assert any(line.startswith(f"{name}: {words}") for line in lines), name


def test_a_page_tells_the_band_of_a_profile() -> None:
    """For photographs a surface holds three things (common practice)."""
    assert "In the profile listing. Sound: 3 or fewer. Aim: 3 or fewer. Glaring: 8." in page(rule("surface-crowded"))


def test_a_listing_counts_from_three_things_on() -> None:
    """Four things on a table are sound to live with, and a fifth of the way to glaring in a photograph."""
    crowded = seen(renter_walls(), "sofa", things=4)
    living, listing = findings(crowded), findings(crowded, Brief(profile="listing"))
    assert living["surface-crowded/sofa"].severity == 0
    assert listing["surface-crowded/sofa"].severity == Fraction(1, 5)


def test_a_page_of_a_hazard_speaks_of_no_band() -> None:
    """Strapped or not: words, no numbers, and only a switch for the brief."""
    text = page(rule("screen-loose"))
    assert "Sound: strapped." in text
    assert "Glaring: not strapped; severity 1 where children live or visit, else 0.4." in text
    assert "safety: hazards are counted apart" in text
    assert "bands: {screen-loose: off}" in text
    assert "glaring: limit" not in text
    assert "By profile" not in text


def test_the_basis_is_told_on_one_line() -> None:
    """The source in full, as `rules --json` gives it."""
    assert basis_of(rule("wall-bare")) == "common practice."
    assert basis_of(rule("cord-in-reach")) == (
        "ANSI/WCMA A100.1-2018 4.3.1 as adopted by 16 CFR 1120.3 and 1260 (published value S6)."
    )


def test_a_page_says_what_becomes_of_a_thing_that_leaves() -> None:
    """A loose bookcase that is gone tips on nobody; a rug that is gone leaves a bare floor."""
    assert "What has left the room is cured." in page(rule("tall-piece-loose"))
    assert "What is taken away keeps its points unless floor-bare passes." in page(rule("rug-slides"))


def test_a_rule_that_is_off_says_so() -> None:
    """All straight edges is a matter of taste: the page tells how to switch it on."""
    text = page(rule("all-straight-edges"))
    assert "Off unless the brief switches it on." in text
    assert "bands: {all-straight-edges: on}" in text


def test_a_pendant_is_a_hazard_only_where_people_walk_under_it() -> None:
    """Over a table it is a matter of looks; over the floor heads meet it (headroom 80 in, published value C9)."""
    table = Piece(name="meals", what="dining table", wall="B", width=1200.0, depth=800.0, height=740.0, room="r")
    low = Light(name="lamp", what="pendant", wall="B", over="meals", bottom=1300.0, room="r")
    room = renter_walls()
    over = room.model_copy(update={"furniture": (*room.furniture, table), "lights": (*room.lights, low)})
    found = findings(over)["pendant-off-height/lamp"]
    assert (found.safety, found.family, found.fault) == (False, "light", True)
    free = findings(seen(over, "lamp", over=""))["pendant-off-height/lamp"]
    assert (free.safety, free.family, free.fault) == (True, None, True)
    listing = findings(seen(over, "lamp", over=""), Brief(profile="listing"))["pendant-off-height/lamp"]
    assert listing.raw == free.raw, "hazards know no profile"
