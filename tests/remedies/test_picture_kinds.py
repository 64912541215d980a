"""Pictures: rehung, levelled, spaced, gathered, moved, and bought."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from budgetfix.remedies.kinds import (
    bigger_picture,
    gather_pictures,
    move_picture,
    rehang_picture,
    relevel_pictures,
    respace_pictures,
    second_picture,
)
from budgetfix.remedies.pictures import group_at, ladder, span_of
from budgetfix.room.items import Hung
from budgetfix.room.survey import Survey
from tests.inspection.rooms import renter, stager_bedroom, stager_living
from tests.remedies.bench import added, altered, fields, fitted, holes, left, product, severity, site, uses

HOOKS = product("hooks", "hooks", pack=Fraction(10))


def frame(name: str, from_left: float, bottom: float, **more: Any) -> Hung:
    """A frame of 500 x 700 on wall B, over the sofa."""
    size = {"room": "r", "wall": "B", "width": 500.0, "height": 700.0, "over": "sofa"}
    return Hung.model_validate({"name": name, "from_left": from_left, "bottom": bottom, **size, **more})


def high(**more: Any) -> Survey:
    """The renter's one picture, 600 mm above the sofa's back."""
    return added(renter(), "pictures", frame("picture", 2100.0, 1400.0, **more))


def desk() -> Survey:
    """Two frames over the renter's desk, 25 mm out of level."""
    size = {"wall": "A", "width": 300.0, "height": 400.0, "over": "desk", "group": "desk frames"}
    return added(
        renter(), "pictures", frame("one", 2605.0, 980.0, **size), frame("two", 2995.0, 955.0, **size)
    )  # fmt: skip


def test_a_picture_is_rehung_a_hand_above_the_sofa() -> None:
    """Lower edge 180 mm above the back (980 above the floor), a new pin hole, and no ladder below 2 m."""
    (one,) = fitted(rehang_picture.KIND, high(), "art-off-height", "picture")
    assert fields(one, "picture") == {"bottom": 980.0, "from_left": 2100.0}
    assert left(high(), one, "art-off-height", "picture") == 0
    assert one.hazards == ("pins",)
    assert dict(one.spends) == {"pins": 1}
    assert "lower edge 980 mm above the floor" in one.work[0].text


def test_a_picture_off_the_middle_is_moved_there_too() -> None:
    """300 mm off the sofa's middle: the second candidate moves it there."""
    survey = altered(high(), "picture", from_left=1800.0)
    offers = fitted(rehang_picture.KIND, survey, "art-off-center", "picture")
    assert [left(survey, one, "art-off-center", "picture") == 0 for one in offers] == [False, True]


def test_a_bare_wall_has_its_own_middle() -> None:
    """Over nothing: middle at 1490 mm (58 1/2 in), and over the middle of the clear wall between window and corner."""
    survey = altered(high(over="", wall="D"), "picture", from_left=100.0)
    offers = fitted(rehang_picture.KIND, survey, "art-off-center", "picture")
    assert fields(offers[-1], "picture") == {"bottom": 1140.0, "from_left": 2000.0}
    assert left(survey, offers[-1], "art-off-center", "picture") == 0


def test_what_hangs_above_two_metres_takes_a_ladder() -> None:
    """A frame that ends at 2.1 m is hung from a ladder."""
    survey = high()
    here = site(survey, "art-off-height", "picture")
    change = rehang_picture.KIND.fit(here)[0].changes
    assert ladder(here, change) == ()
    tall = site(altered(survey, "picture", height=1200.0), "art-off-height", "picture")
    assert rehang_picture.KIND.fit(tall)[0].hazards == ("pins", "ladder")


def test_a_row_is_brought_to_one_line() -> None:
    """25 mm out of level: the second frame follows the first; a level row asks for nothing."""
    survey = desk()
    (one,) = fitted(relevel_pictures.KIND, survey, "art-out-of-level", "desk frames")
    assert fields(one, "two") == {"bottom": 980.0}
    assert one.work[0].minutes == 14
    assert left(survey, one, "art-out-of-level", "desk frames") == 0


def test_uneven_gaps_are_evened_out() -> None:
    """The stager's three photographs hang with gaps of 3 and 7 in: 2 1/2 in each, about the sofa's middle."""
    survey = stager_living()
    for name in ("photo-1", "photo-2", "photo-3"):
        survey = altered(survey, name, over="sofa", group="photos")
    (one,) = fitted(respace_pictures.KIND, survey, "art-gaps-uneven", "photos")
    assert left(survey, one, "art-gaps-uneven", "photos") == 0
    assert left(survey, one, "art-off-height", "photos") == 0


def test_loose_pictures_are_gathered_over_the_sofa() -> None:
    """Two frames that hang over nothing join the one over the sofa; two thirds of it is covered."""
    size = {"wall": "D", "width": 400.0, "height": 500.0, "over": ""}
    survey = added(high(), "pictures", frame("a", 200.0, 1300.0, **size), frame("b", 900.0, 1300.0, **size))
    (one,) = fitted(gather_pictures.KIND, survey, "art-too-small", "picture")
    after = survey.changed(one.changes)
    assert sorted(dict(after.named[name][1])["over"] for name in ("a", "b", "picture")) == ["sofa"] * 3
    assert left(survey, one, "art-too-small", "picture") == 0
    assert left(survey, one, "art-off-height", "picture") == 0
    assert fitted(gather_pictures.KIND, high(), "art-too-small", "picture") == (), "nothing to gather"


def test_a_picture_that_leans_somewhere_is_hung_over_a_bare_sofa() -> None:
    """Nothing over the sofa, and a picture that leans on the desk: hung there, for nothing."""
    leaning = frame("leaning", 2605.0, 740.0, wall="A", width=900.0, over="desk", leaned=True)
    survey = added(renter(), "pictures", leaning)
    (one,) = fitted(move_picture.KIND, survey, "wall-bare", "sofa")
    assert uses(one) == {}
    assert left(survey, one, "wall-bare", "sofa") == 0
    assert fitted(move_picture.KIND, renter(), "wall-bare", "sofa") == ()


def test_a_picture_of_two_thirds_is_bought() -> None:
    """120 x 80 is 0.57 of the sofa; 50 x 70 is too small and 200 too large. Its old hole, 2050 mm up, is filled."""
    sold = (
        product("p120", "picture", width=1200.0, height=800.0),
        product("p50", "picture", width=500.0, height=700.0),
    )
    offers = fitted(bigger_picture.KIND, high(), "art-too-small", "picture", *sold, HOOKS)
    assert [uses(one) for one in offers] == [{"hooks": 2, "p120": 1}]
    assert left(high(), offers[0], "art-too-small", "picture") == 0
    assert "Fill and touch up the old hole" in offers[0].work[1].text
    assert holes(offers[0]) == 0


def test_a_bare_piece_gets_a_picture() -> None:
    """Nothing over the renter's sofa: a bought picture is hung over its middle."""
    survey = renter()
    sold = product("p140", "picture", width=1400.0, height=1000.0)
    (one,) = fitted(bigger_picture.KIND, survey, "wall-bare", "sofa", sold)
    assert left(survey, one, "wall-bare", "sofa") == 0
    assert (
        fitted(bigger_picture.KIND, survey, "wall-bare", "sofa", product("t", "picture", width=1400.0, height=1900.0))
        == ()
    )


def test_the_head_of_a_bed_gets_no_second_row() -> None:
    """The bed that already has a picture high over it gets that one lowered, not another one below it."""
    sold = product("p", "picture", width=900.0, height=600.0)
    assert fitted(bigger_picture.KIND, stager_bedroom(), "bed-headless", "bed", sold) == ()


@pytest.mark.parametrize(("width", "more"), [(500.0, 2), (800.0, 1), (200.0, None)])
def test_more_pictures_beside_the_one(width: float, more: int | None) -> None:
    """One wide or two small ones join the picture, as one group about the sofa's middle."""
    survey = high()
    offers = fitted(
        second_picture.KIND, survey, "art-too-small", "picture", product("p", "picture", width=width, height=700.0)
    )
    assert [uses(one)["p"] for one in offers] == ([] if more is None else [more])
    for one in offers:
        assert left(survey, one, "art-too-small", "picture") == 0
        assert left(survey, one, "art-off-center", "picture") == 0
        assert left(survey, one, "art-gaps-wide", "picture") == 0


def test_a_group_is_found_by_one_of_its_frames() -> None:
    """A user's remedy may name any frame of a group; its span is the desk's width."""
    here = site(desk(), "art-out-of-level", "desk frames")
    group = group_at(here)
    assert group is not None
    assert [one.name for one in group.frames] == ["one", "two"]
    assert span_of(here, group).width == 1000.0
    assert severity(desk(), "art-out-of-level", "desk frames") > 0
