"""What follows a change: old holes, straps, lamps, pictures over a moved sofa, and where what leaves goes."""

from __future__ import annotations

from typing import Any

import pytest

from budgetfix.brief.models import Brief
from budgetfix.catalog.models import Catalog, Remedy, WorkStep
from budgetfix.remedies.fit import candidates
from budgetfix.remedies.following import PIN, PLUG, TOUCH_UP, Following, following, says
from budgetfix.remedies.kinds import (
    bigger_picture,
    fill_holes,
    longer_rod,
    lower_screen,
    rehang_picture,
    relevel_pictures,
    take_away,
)
from budgetfix.remedies.old_paint import holes_mm2
from budgetfix.room.items import Hung, Light
from budgetfix.room.survey import Change, Survey
from tests.inspection.rooms import couple_living, renter
from tests.remedies.bench import BRIEF, altered, fitted, product, site
from tests.remedies.test_picture_kinds import desk, high
from tests.remedies.test_screen_and_table_kinds import screened
from tests.remedies.test_screen_place_kinds import high as on_the_wall
from tests.remedies.test_users_remedies import PAIR, ROD, users

GOES = "will go: another room, storage, sold or given away"


def moved(survey: Survey, item: str, **new: Any) -> Following:
    """What follows when fields of one thing are set."""
    return following(survey, (Change(survey.named[item][0], item, tuple(sorted(new.items()))),))


def gone(survey: Survey, item: str) -> Following:
    """What follows when a thing is taken away."""
    return following(survey, (Change(survey.named[item][0], item, remove=True),))


def hung(**more: Any) -> Survey:
    """The renter's picture over the sofa, 1400 to 2100 mm up."""
    return altered(high(), "picture", **more)


@pytest.mark.parametrize(
    ("new", "filled"),
    [
        ({"bottom": 1365.0}, 0),
        ({"bottom": 1351.0}, 0),
        ({"bottom": 1349.0}, 1),
        ({"bottom": 980.0}, 1),
        ({"bottom": 1700.0}, 0),
        ({"bottom": 2051.0}, 1),
        ({"from_left": 2340.0}, 0),
        ({"from_left": 2360.0}, 1),
        ({"wall": "D"}, 1),
        ({"width": 1200.0, "from_left": 1750.0}, 0),
        ({"leaned": True, "bottom": 0.0}, 1),
        ({"personal": True}, 0),
    ],
)
def test_an_old_hole_is_filled_where_it_shows(new: dict[str, Any], filled: int) -> None:
    """The nail is 50 mm below the frame's top, in its middle: what hangs there afterwards may still cover it."""
    found = moved(hung(), "picture", **new)
    assert (found.filled, len(found.steps)) == (filled, filled)


@pytest.mark.parametrize(
    ("held", "sort", "holes"),
    [
        ({"fixing": "nail"}, PIN, 1),
        ({"fixing": "unknown"}, PIN, 1),
        ({"fixing": "screws"}, PLUG, 2),
        ({"fixing": "strips"}, PIN, 0),
        ({"fixing": "none"}, PIN, 0),
        ({"leaned": True}, PIN, 0),
        ({"what": "shelf"}, PLUG, 4),
        ({"what": "sconce"}, PLUG, 2),
        ({"what": "screen", "fixing": "screws"}, PLUG, 4),
        ({"what": "alarm"}, PIN, 0),
        ({"what": "old holes", "fixing": "nail"}, PIN, 0),
    ],
)
def test_what_held_it_decides_the_holes(held: dict[str, Any], sort: tuple[int, int, int], holes: int) -> None:
    """One nail, two screws, four for a shelf or a screen; strips and leaning leave none. A pin 5/8/12, a plug
    10/15/25, the second and each more at 0.7, and 5 to touch up: our judgement, from the trade's table.
    """
    found = gone(hung(**held), "picture")
    assert found.filled == holes
    assert len(found.steps) == (1 if holes else 0)
    for step in found.steps:
        each = [one + 0.7 * (holes - 1) * one + TOUCH_UP for one in sort]
        assert [step.low, step.likely, step.high] == [pytest.approx(one, abs=1.0) for one in each]
        assert (step.people, step.phase) == (1, 13)


def test_the_minutes_of_one_pin_and_of_six_plugs() -> None:
    """One pin: 10, 13 and 17, planned 14. A rod's six plugs: 50, 73 and 118, planned 80."""
    (pin,) = moved(hung(), "picture", bottom=980.0).steps
    assert (pin.low, pin.likely, pin.high, pin.minutes) == (10, 13, 17, 14)
    (plugs,) = moved(renter(), "curtain", rod_height=2390.0).steps
    assert (plugs.low, plugs.likely, plugs.high, plugs.minutes) == (50, 73, 118, 80)
    assert "the 6 old holes of the rod at the win" in plugs.text


@pytest.mark.parametrize(
    ("new", "holes"),
    [
        ({"rod_height": 2390.0}, 6),
        ({"rod_width": 1900.0, "rod_from_left": 750.0}, 6),
        ({"rod_height": 2160.0}, 0),
        ({"hem": 30.0}, 0),
        ({"panel_width": 1400.0, "hem": 10.0}, 0),
    ],
)
def test_a_rod_that_moves_leaves_two_holes_a_bracket(new: dict[str, Any], holes: int) -> None:
    """1500 mm of rod hang from three brackets; new cloth on the old rod leaves no hole."""
    assert moved(renter(), "curtain", **new).filled == holes
    assert gone(altered(renter(), "curtain", rod_width=1200.0), "curtain").filled == 4


def test_relevelling_adds_no_step() -> None:
    """A frame that comes down by 25 mm still covers its nail: no filling, and the minutes stay as they were."""
    (one,) = fitted(relevel_pictures.KIND, desk(), "art-out-of-level", "desk frames")
    assert [step.minutes for step in one.work] == [14]
    assert one.paint_mm2 == 0.0


def test_a_rehung_picture_gets_its_second_step() -> None:
    """From 1400 to 980: the old hole at 2050 shows, so it is filled at the end; the first step no longer says so."""
    (one,) = fitted(rehang_picture.KIND, high(), "art-off-height", "picture")
    assert [(step.phase, step.minutes) for step in one.work] == [(11, 22), (13, 14)]
    assert one.work[1].text.startswith("Fill and touch up the old hole of picture: ")
    assert "fill" not in one.work[0].text


def test_a_bigger_picture_that_covers_the_hole_needs_no_filling() -> None:
    """Where the old nail is behind the new frame, nothing follows but the old picture, which goes somewhere."""
    sold = product("tall", "picture", width=1200.0, height=1250.0)
    survey = altered(hung(), "picture", bottom=1250.0, height=500.0)
    (one,) = fitted(bigger_picture.KIND, survey, "art-too-small", "picture", sold)
    assert len(one.work) == 1
    assert one.work[0].text.endswith(f"say where the old picture {GOES}")


def test_a_new_rod_fills_the_old_holes_and_parts_with_the_old_cloth() -> None:
    """The tool's own rod: bracket holes as a second step of its own; the old panels are said."""
    for one in fitted(longer_rod.KIND, renter(), "rod-too-narrow", "win", ROD, PAIR):
        assert one.work[1].text.startswith("Fill and touch up the 6 old holes of the rod at the win")
        new = "old panels" not in one.id
        assert one.work[0].text.endswith(f"say where the old cloth {GOES}") is new


def test_a_lamp_goes_back_on_what_moved() -> None:
    """The desk's lamp: put back when the desk moves, a new place when it goes, nothing when the lamp goes too."""
    lamp = Light(name="desk lamp", room="r", what="table lamp", on="desk", wall="A", from_left=2600.0)
    survey = renter().changed((Change("lights", "desk lamp", add=lamp),))
    assert moved(survey, "desk", from_left=2300.0).said == ("put the desk lamp back on the desk",)
    assert "find a new place for the desk lamp" in gone(survey, "desk").said
    both = (Change("furniture", "desk", (("from_left", 2300.0),)), Change("lights", "desk lamp", (("on", ""),)))
    assert following(survey, both).said == ()
    assert moved(survey, "desk", things=3).said == ()


def test_a_strapped_screen_is_strapped_again() -> None:
    """Bench changed under a strapped screen: it is put back and strapped, and the old bench goes somewhere."""
    survey = altered(screened(), "screen", fixing="strap")
    found = moved(survey, "console", width=1600.0)
    assert found.said[:2] == ("put the screen back on the console", "strap the screen again")
    assert found.said[2] == f"say where the old console {GOES}"


def test_a_strap_is_fixed_again_where_the_piece_moved() -> None:
    """A bookcase that was fixed moves along: a step for its strap before the seats, two new plugs, old holes filled."""
    survey = altered(renter(), "bookcase", fixed=True)
    found = moved(survey, "bookcase", from_left=2600.0)
    strap, fill = found.steps
    assert (strap.phase, strap.low, strap.likely, strap.high) == (6, 15, 25, 45)
    assert strap.text.startswith("Fix the bookcase to the wall again")
    assert fill.text.startswith("Fill and touch up the 2 old holes of the strap of the bookcase")
    assert (found.plugs, found.filled) == (2, 2)
    assert {"drill", "tipping"} <= set(found.hazards)
    assert moved(survey, "bookcase", from_left=1500.0).filled == 1, "the other one is still behind the piece"
    assert moved(renter(), "bookcase", from_left=2600.0).steps == (), "it was loose before"


def test_a_sofa_that_moves_voids_what_was_measured_over_it() -> None:
    """The picture over it is measured again, unless it goes along."""
    words = "measure the picture again: height and middle were for the sofa where it was"
    assert moved(hung(), "sofa", from_left=1500.0).said == (words,)
    assert moved(hung(), "sofa", main=True).said == ()
    both = (
        Change("furniture", "sofa", (("from_left", 1500.0),)),
        Change("pictures", "picture", (("from_left", 2300.0),)),
    )
    assert words not in following(hung(), both).said


@pytest.mark.parametrize(
    ("item", "new", "said"),
    [
        ("rug", {"width": 1700.0, "depth": 1200.0}, ()),
        ("rug", {"width": 2280.0, "depth": 1580.0}, (f"say where the old rug {GOES}",)),
        ("table", {"gap": 1280.0}, ()),
        ("bookcase", {"height": 2100.0}, ()),
        ("table", {"width": 1100.0}, (f"say where the old table {GOES}",)),
        ("curtain", {"panel_width": 1400.0}, (f"say where the old cloth {GOES}",)),
    ],
)
def test_what_another_one_replaces_goes_somewhere(item: str, new: dict[str, Any], said: tuple[str, ...]) -> None:
    """Another size is another thing: the old one goes somewhere. A rug that is only turned stays."""
    survey = altered(renter(), "rug", width=1200.0, depth=1700.0)
    assert moved(survey, item, **new).said == said


def test_a_sellers_own_things_are_put_away() -> None:
    """Staging a home for sale sells and gives away nothing of the owner's; tool's and user's words alike."""
    listing, said = Brief(profile="listing"), "say where the rug will go: put away with the owner's things"
    here = site(renter(), "rug-misses-seats", "rug")
    (tools,) = take_away.KIND.fit(type(here)(here.survey, "r", "rug", here.catalog, listing))
    catalog = Catalog(remedies=(Remedy(remedy="m1", kind="take-away", on="rug", steps=(WorkStep(minutes=5),)),))
    (own,) = (one for one in candidates(renter(), catalog, listing, ()) if one.id == "m1")
    assert [one.work[-1].text.split("; ")[-1] for one in (tools, own)] == [said, said]


def test_what_is_taken_away_goes_somewhere() -> None:
    """The tool says so in the task; which place it is, the user says."""
    assert gone(renter(), "rug").said == (f"say where the rug {GOES}",)
    here = site(renter(), "rug-misses-seats", "rug")
    (one,) = take_away.KIND.fit(type(here)(here.survey, "r", "rug", here.catalog, here.brief))
    assert one.work[0].text == f"Take rug out of the room; say where the rug {GOES}"


@pytest.mark.parametrize(
    ("item", "new", "hazards"),
    [
        ("curtain", {"hem": 30.0}, ("heat",)),
        ("bookcase", {"from_left": 1300.0}, ("tipping",)),
        ("bookcase", {"fixed": True}, ()),
        ("shoes", {"from_left": 3000.0}, ()),
        ("ceiling", {"lumens": 1500.0}, ()),
    ],
)
def test_hazards_of_the_room_come_in(item: str, new: dict[str, Any], hazards: tuple[str, ...]) -> None:
    """Cloth over a radiator, a tall piece that is pushed; not a strap, a low cabinet, a bulb."""
    assert moved(renter(), item, **new).hazards == hazards


def test_cloth_far_from_heaters_and_leads_that_move() -> None:
    """36 in (910 mm, S8) beside the rod is near; a floor lamp that moves brings its lead."""
    away = altered(altered(renter(), "radiator", wall="D"), "fan heater", wall="D")
    assert moved(away, "curtain", hem=30.0).hazards == ()
    near = altered(away, "fan heater", wall="C", from_left=950.0 + 1500.0 + 909.0)
    far = altered(away, "fan heater", wall="C", from_left=950.0 + 1500.0 + 911.0)
    assert [moved(one, "curtain", hem=30.0).hazards for one in (near, far)] == [("heat",), ()]
    assert moved(couple_living(), "floor lamp", from_left=1000.0).hazards == ("cord",)
    assert moved(couple_living(), "floor lamp", lumens=800.0).hazards == ()


def test_a_hole_high_up_takes_a_ladder() -> None:
    """A hole at 2150 mm is out of reach from the floor, one at 2050 is not."""
    assert moved(hung(bottom=1500.0), "picture", bottom=980.0).hazards == ("ladder",)
    assert moved(hung(), "picture", bottom=980.0).hazards == ()


def test_filling_old_holes_counts_them() -> None:
    """A patch of seven old holes that is filled disturbs paint seven times, and no step comes on top."""
    patch = Hung(name="marks", room="r", what="old holes", wall="D", from_left=500.0, width=300.0, height=300.0,
                 bottom=1200.0, things=7)  # fmt: skip
    survey = renter().changed((Change("pictures", "marks", add=patch),))
    for found in (moved(survey, "marks", things=0), gone(survey, "marks")):
        assert (found.filled, found.steps, found.said) == (7, (), ())
    (one,) = fitted(fill_holes.KIND, survey, "old-holes-show", "room")
    assert one.paint_mm2 == pytest.approx(holes_mm2(0, 7))
    assert any("may hold lead" in care for care in one.cares)


def test_own_work_that_fills_adds_no_step() -> None:
    """A kind whose own minutes fill the old holes gets no second step for them."""
    change = Change("pictures", "picture", (("bottom", 980.0),))
    found = following(hung(), (change,), fill=False)
    assert (found.steps, found.filled) == ((), 1), "its paint counts all the same"
    (screen,) = fitted(lower_screen.KIND, on_the_wall(), "screen-off-eye-level", "screen")
    assert [step.phase for step in screen.work] == [10]


def test_of_a_users_remedy_it_is_only_said() -> None:
    """The user's minutes stand; what follows is said in the last step, the user's own words first."""
    given: dict[str, Any] = {"kind": "longer-rod", "on": "curtain", "set": (("rod_height", 2390.0), ("hem", 300.0))}
    step = {"minutes": 100, "text": "Hang it"}
    one = users(renter(), steps=(step, step), **given)
    assert [work.minutes for work in one.work] == [100, 100]
    assert one.work[0].text == "Hang it"
    assert one.work[1].text.startswith("Hang it; fill and touch up the 6 old holes of the rod at the win: ")


def test_what_the_user_fills_is_not_said_again() -> None:
    """The user's own step speaks of filling: once is enough."""
    given: dict[str, Any] = {"kind": "longer-rod", "on": "curtain", "set": (("rod_height", 2390.0), ("hem", 300.0))}
    for text, said in (("Hang it", True), ("Hang it, fill the old holes", False)):
        one = users(renter(), steps=({"minutes": 100, "text": text},), **given)
        assert ("fill and touch up" in one.work[0].text) is said


def test_what_a_need_fills_is_not_said_again() -> None:
    """The user takes the old rod down and fills in a remedy of its own, which the new rod needs."""
    down = Remedy(remedy="down", name="Take the rod down, fill the holes")
    for needs, said in ((("down",), False), ((), True)):
        rod = Remedy(
            remedy="rod", kind="longer-rod", on="curtain", set=(("rod_height", 2390.0), ("hem", 300.0)), needs=needs,
            steps=(WorkStep(minutes=100),),
        )  # fmt: skip
        found = {one.id: one for one in candidates(renter(), Catalog(remedies=(down, rod)), BRIEF, ())}
        assert ("fill and touch up" in found["rod"].work[0].text) is said


def test_frames_of_a_group_are_named_as_one() -> None:
    """Two frames over the desk that go: two holes, one name."""
    changes = tuple(Change("pictures", name, remove=True) for name in ("one", "two"))
    (step,) = following(desk(), changes).steps
    assert step.text.startswith("Fill and touch up the 2 old holes of desk frames: ")
    assert moved(desk(), "desk", from_left=2300.0).said[0].startswith("measure the desk frames again")


def test_nothing_follows_a_clean_move() -> None:
    """A coffee table slides: no step, no sentence, no hazard."""
    assert moved(renter(), "table", gap=1280.0) == Following()
    assert says("Slide it", ()) == "Slide it"
    assert says("Slide it", ("one", "two")) == "Slide it; one; two"
