"""Old paint against the published rows, and the words of its caution. Sources: 40 CFR 745.83; 15 USC 2681(17)."""

from __future__ import annotations

import math

import pytest

from budgetfix.base.twin import MM_PER_INCH
from budgetfix.remedies.kinds import rehang_picture, strap
from budgetfix.remedies.old_paint import (
    BEYOND,
    MM2_PER_SQ_FT,
    PATCH_MM,
    PLUG_MM,
    PaintWork,
    beyond_minor,
    disturbed_mm2,
    holes_mm2,
    matters,
    most_in_30_days,
    old_paint_care,
    sq_ft,
    strip_mm2,
    target_housing,
)
from budgetfix.room.survey import Household
from tests.inspection.rooms import renter
from tests.remedies.bench import altered, fitted, product
from tests.remedies.test_picture_kinds import high


def work(feet: float, day: int = 0, room: str = "r", window: bool = False) -> PaintWork:
    """Paint work of so many square feet."""
    return PaintWork(room, day, feet * MM2_PER_SQ_FT, window)


@pytest.mark.parametrize(
    ("works", "rooms"),
    [
        ((work(6.0),), ()),
        ((work(6.01),), ("r",)),
        ((work(4.0, 0), work(4.0, 20)), ("r",)),
        ((work(4.0, 0), work(4.0, 29)), ("r",)),
        ((work(4.0, 0), work(4.0, 30)), ()),
        ((work(4.0, 20), work(4.0, 0)), ("r",)),
        ((work(4.0, room="a"), work(4.0, room="b")), ()),
        ((work(0.1, window=True),), ("r",)),
        ((), ()),
    ],
)
def test_the_limit_of_minor_repair(works: tuple[PaintWork, ...], rooms: tuple[str, ...]) -> None:
    """S2 (40 CFR 745.83): 6.0 sq ft a room is exempt, 6.01 not; two of 4 within 30 days count together; any window."""
    assert beyond_minor(works) == rooms


def test_the_most_of_any_thirty_days() -> None:
    """S2: three jobs 20 days apart never fall into one month together; the larger pair counts."""
    assert most_in_30_days((work(2.0, 0), work(3.0, 20), work(4.0, 40)))["r"] == pytest.approx(7.0)


def test_a_strip_off_a_door() -> None:
    """S3 (answer 23002-14294): 1 in off a 36 in door is 36 sq in, 0.25 sq ft."""
    strip = strip_mm2(MM_PER_INCH, 36 * MM_PER_INCH)
    assert strip == pytest.approx(36 * MM_PER_INCH**2)
    assert sq_ft(strip) == pytest.approx(0.25)


@pytest.mark.parametrize(("year", "inside"), [(1965, True), (1977, True), (1978, False), (1985, False)])
def test_target_housing(year: int, inside: bool) -> None:
    """S4 (15 USC 2681(17)): built before 1978."""
    assert target_housing(year) is inside


def test_two_doors_and_a_cut_wall() -> None:
    """W24: 1 in off two 36 in doors is 0.5 sq ft, exempt; 2 x 4 ft of wall is 8: the rule, in 1965, not in 1985."""
    doors = 2 * strip_mm2(MM_PER_INCH, 36 * MM_PER_INCH)
    wall = strip_mm2(24 * MM_PER_INCH, 48 * MM_PER_INCH)
    assert [sq_ft(doors), sq_ft(wall)] == pytest.approx([0.5, 8.0])
    for year, rooms in ((1965, ("r",)), (1985, ())):
        home = Household(before_1978=target_housing(year))
        cut = disturbed_mm2(home, 0, 0, wall)
        assert beyond_minor((PaintWork("r", 0, cut),)) == rooms
        assert beyond_minor((PaintWork("r", 0, disturbed_mm2(home, 0, 0, doors)),)) == ()


def test_holes_are_small() -> None:
    """Common practice: a plug of 8 mm, a patch of 50 mm; a whole rod moved is a twentieth of a square foot at most."""
    assert holes_mm2(1, 0) == pytest.approx(math.pi * PLUG_MM**2 / 4)
    assert holes_mm2(0, 1) == pytest.approx(math.pi * PATCH_MM**2 / 4)
    assert 0 < sq_ft(holes_mm2(6, 6)) < 0.15


@pytest.mark.parametrize(("known", "counts"), [(True, True), (None, True), (False, False)])
def test_a_home_that_nobody_dated_counts_as_old(known: bool | None, counts: bool) -> None:
    """Before 1978, or not known: the caution stands; known to be younger: no word, and no paint to add up."""
    home = Household(before_1978=known)
    assert matters(home) is counts
    assert (old_paint_care(home) != "") is counts
    assert (disturbed_mm2(home, 2, 1) > 0) is counts


def test_the_law_of_one_country_is_named_as_such() -> None:
    """Inches: "in the United States", and local codes first; a metric survey hears of local rules only."""
    inches = old_paint_care(Household(unit="in", before_1978=True))
    metric = old_paint_care(Household(unit="mm", before_1978=True))
    assert inches == (
        "Paint from before 1978 may hold lead: no sanding, no dry scraping. In the United States more than 6 sq ft a "
        "room in 30 days is for a certified renovator. Local codes come first."
    )
    assert metric == "Paint from before 1978 may hold lead: no sanding, no dry scraping; local rules come first."
    assert "not known" in old_paint_care(Household())
    for words in (inches, metric, BEYOND):
        assert not {"safe", "legal", "allowed"} & set(words.replace(",", "").split())


def test_drilling_and_filling_disturb_paint() -> None:
    """Two straps drill two holes; a picture that moves leaves one to fill; both carry the caution, a pin alone not."""
    (straps,) = fitted(strap.KIND, renter(), "tall-piece-loose", "bookcase", product("s", "strap"))
    assert straps.paint_mm2 == pytest.approx(holes_mm2(2, 0))
    (moved,) = fitted(rehang_picture.KIND, high(), "art-off-height", "picture")
    assert moved.paint_mm2 == pytest.approx(holes_mm2(0, 1))
    low = altered(high(), "picture", bottom=820.0)
    (raised,) = fitted(rehang_picture.KIND, low, "art-off-height", "picture")
    assert raised.paint_mm2 == 0.0, "the frame still covers its old hole"
    for one, told in ((straps, True), (moved, True), (raised, False)):
        assert any("may hold lead" in care for care in one.cares) is told
