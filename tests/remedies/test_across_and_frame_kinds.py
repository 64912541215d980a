"""One rod across two windows; pictures leaned, framed larger, and lit."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from budgetfix.remedies.kinds import lean_picture, mount_board, picture_light, rod_across
from budgetfix.room.items import Curtain, Hung, Opening
from budgetfix.room.survey import Survey
from tests.inspection.rooms import INCH, couple_living, renter, stager_living
from tests.remedies.bench import added, altered, fields, fitted, holes, left, product, severity, site, uses, without

ROD = product("rod", "rod", width=2000.0, width_to=3800.0, price_minor=5800)
LONG = product("long", "rod", width=2500.0, width_to=4500.0)
PAIR = product("pair", "panels", width=1400.0, drop=2500.0, heading="eyelet", cloth="lined", price_minor=5200)
THIN = product("thin", "panels", width=900.0, drop=2500.0, heading="eyelet", cloth="lined", price_minor=3000)
TAPE = product("tape", "hem tape", price_minor=500)


def two_windows(**more: Any) -> Survey:
    """The stager's windows of 36 in, 52 in apart: rods at 87 and 90 in, of 38 in, hems 3 and 6 in up."""
    curtains = (
        Curtain.model_validate({
            "name": f"curtain-{at}", "room": "r", "window": f"win-{at}", "rod_height": up * INCH, "hem": hem * INCH,
            "rod_from_left": start * INCH, "rod_width": 38 * INCH, "panel_width": 42 * INCH, "stack": 9 * INCH, **more,
        })
        for at, up, hem, start in ((1, 87.0, 3.0, 27.0), (2, 90.0, 6.0, 115.0))
    )  # fmt: skip
    return added(stager_living(), "curtains", *curtains)


@pytest.mark.parametrize(("rule", "subject"), [("rods-out-of-line", "wall C"), ("rod-hung-low", "win-1"),
                                               ("rod-too-narrow", "win-1"), ("panels-skimpy", "win-1")])  # fmt: skip
def test_one_rod_across_answers_both_windows(rule: str, subject: str) -> None:
    """Four panels of 1400 on 141 in or so of rod are 1.56 times: rods, heights, widths and cloth are cured at once."""
    survey = two_windows(panel_width=25 * INCH)
    before = severity(survey, rule, subject)
    (one,) = fitted(rod_across.KIND, survey, rule, subject, ROD, PAIR, TAPE)
    assert before > left(survey, one, rule, subject) == 0
    assert [(change.item, change.remove) for change in one.changes] == [("curtain-1", False), ("curtain-2", True)]
    hung = fields(one, "curtain-1")
    assert (hung["also_window"], hung["panels"], uses(one)["pair"]) == ("win-2", 4, 2)
    assert (holes(one), one.work[0].people, rod_across.KIND.leaves) == (8, 2, "plugs")
    assert (one.work[0].low, one.work[0].likely, one.work[0].high) == (70, 110, 170)
    assert "2 before the wall between" in one.work[0].text


def test_thin_panels_are_hung_six_or_eight() -> None:
    """Six panels of 900 are 1.4 times the rod: eight make it, and two of them stand at each end."""
    (one,) = fitted(rod_across.KIND, two_windows(), "rod-hung-low", "win-1", LONG, THIN, TAPE)
    assert fields(one, "curtain-1")["panels"] == 8
    assert fields(one, "curtain-1")["stack"] == pytest.approx(900.0 * 2 * 0.22)
    assert left(two_windows(), one, "panels-skimpy", "win-1") < Fraction(1, 5)
    assert left(two_windows(), one, "rod-too-narrow", "win-1") == 0


def test_four_old_panels_of_one_sort_are_hung_again() -> None:
    """Both pairs are 92 in long and 60 in wide: on one rod they are full enough, and only the rod is bought."""
    survey = two_windows(panel_width=60 * INCH, stack=None)
    survey = altered(altered(survey, "curtain-1", rod_height=95 * INCH), "curtain-2", rod_height=98 * INCH)
    (one,) = fitted(rod_across.KIND, survey, "rods-out-of-line", "wall C", ROD)
    assert uses(one) == {"rod": 1}
    assert fields(one, "curtain-1")["rod_height"] == pytest.approx(92.25 * INCH, abs=7.0)
    for rule in ("rod-too-narrow", "panels-skimpy", "hem-off-floor"):
        assert left(survey, one, rule, "win-1") == 0, rule
    other = altered(survey, "curtain-2", cloth="sheer")
    assert fitted(rod_across.KIND, other, "rods-out-of-line", "wall C", ROD) == ()


def test_a_bare_neighbour_is_dressed_too() -> None:
    """Only the right window has cloth: the rod is new at the left one, the right curtain goes."""
    survey = without(two_windows(), "curtain-1")
    (one,) = fitted(rod_across.KIND, survey, "rod-hung-low", "win-2", ROD, PAIR, TAPE)
    assert [(change.add is not None, change.remove) for change in one.changes] == [(True, False), (False, True)]


@pytest.mark.parametrize("sold", [(product("rod", "rod", width=1000.0, width_to=3000.0), PAIR, TAPE),
                                  (ROD, product("none", "panels", width=400.0, drop=2500.0), TAPE),
                                  (ROD, PAIR.model_copy(update={"drop": 3000.0}))])  # fmt: skip
def test_no_rod_across_without_its_goods(sold: Any) -> None:
    """A rod too short, cloth too thin even with eight panels, or cloth too long and no tape."""
    assert fitted(rod_across.KIND, two_windows(), "rod-hung-low", "win-1", *sold) == ()


def test_no_rod_across_a_door_or_uneven_heads() -> None:
    """A door between, a head 10 in lower, one window alone, or a rod across them already: nothing is offered."""
    door = Opening(name="garden", room="r", wall="C", from_left=70 * INCH, width=36 * INCH)
    for survey in (
        added(two_windows(), "openings", door),
        altered(two_windows(), "win-2", top=74 * INCH),
        without(two_windows(), "win-2", "curtain-2"),
        altered(without(two_windows(), "curtain-2"), "curtain-1", also_window="win-2"),
    ):
        assert fitted(rod_across.KIND, survey, "rod-hung-low", "win-1", ROD, PAIR, TAPE) == ()


PICTURE = product("picture", "picture", width=1000.0, height=700.0)


def sideboard(**more: Any) -> Survey:
    """The couple's sideboard of 1600 by 800, nothing over it, in a home without children unless said otherwise."""
    survey = couple_living()
    home = survey.household.model_copy(update={"children": False, "toddlers": False, **more})
    return survey.model_copy(update={"household": home})


def test_a_new_picture_is_leaned_without_a_hole() -> None:
    """1000 wide on 1600, lower edge on the top at 800: the wall is not bare, nothing is drilled or pinned."""
    (one,) = fitted(lean_picture.KIND, sideboard(), "wall-bare", "sideboard", PICTURE)
    assert left(sideboard(), one, "wall-bare", "sideboard") == 0
    assert (one.hazards, one.spends, lean_picture.KIND.leaves) == ((), (), "nothing")
    (change,) = one.changes
    assert change.add is not None
    assert (getattr(change.add, "bottom", 0), getattr(change.add, "leaned", False)) == (800.0, True)


def test_a_picture_that_is_there_is_leaned_for_nothing() -> None:
    """One that hangs on another wall over nothing; its old hole is filled as a step of its own."""
    frame = Hung(name="print", room="r", wall="A", from_left=2000.0, width=700.0, height=500.0, bottom=1300.0)
    survey = added(sideboard(), "pictures", frame)
    offers = fitted(lean_picture.KIND, survey, "wall-bare", "sideboard", PICTURE)
    assert uses(offers[0]) == {}
    assert fields(offers[0], "print")["over"] == "sideboard"
    assert left(survey, offers[0], "wall-bare", "sideboard") == 0


@pytest.mark.parametrize("home", [{"children": True}, {"toddlers": True}])
def test_nothing_is_leaned_where_children_pull(home: dict[str, bool]) -> None:
    """It would come down."""
    assert fitted(lean_picture.KIND, sideboard(**home), "wall-bare", "sideboard", PICTURE) == ()


def test_nothing_is_leaned_on_a_sofa_or_beside_a_lamp() -> None:
    """A sofa has no top; a sideboard with a lamp on it has no room."""
    assert fitted(lean_picture.KIND, renter(), "wall-bare", "sofa", PICTURE) == ()
    survey = sideboard()
    lamp = survey.lights[0].model_copy(update={"name": "lamp on it", "on": "sideboard"})
    assert fitted(lean_picture.KIND, added(survey, "lights", lamp), "wall-bare", "sideboard", PICTURE) == ()


def small(**more: Any) -> Survey:
    """A picture of 500 by 700 over the renter's sofa of 2100."""
    facts = {"name": "picture", "room": "r", "wall": "B", "from_left": 2100.0, "width": 500.0, "height": 700.0,
             "bottom": 980.0, "over": "sofa"}  # fmt: skip
    return added(renter(), "pictures", Hung.model_validate({**facts, **more}))


def test_a_small_picture_gets_a_bigger_frame() -> None:
    """Lying, 1300 wide on a sofa of 2100 (0.62), its lower edge 180 above the back, one new pin."""
    frame = product("frame", "frame", width=1000.0, height=1300.0)
    (one,) = fitted(mount_board.KIND, small(), "art-too-small", "picture", frame)
    assert fields(one, "picture") == {"from_left": 1700.0, "width": 1300.0, "height": 1000.0, "bottom": 980.0}
    for rule in ("art-too-small", "art-off-center", "art-off-height"):
        assert left(small(), one, rule, "picture") == 0
    assert dict(one.spends) == {"pins": 1}
    assert one.id == "mount-board/picture/frame~lying"
    assert "say where" not in one.work[0].text


@pytest.mark.parametrize("frame", [product("f", "frame", width=1300.0, height=600.0),
                                   product("f", "frame", width=1000.0, height=1000.0)])  # fmt: skip
def test_a_frame_that_does_not_hold_it_or_helps_not_is_not_offered(frame: Any) -> None:
    """Lower than the picture is tall, or under 0.55 of the sofa; and no mirror is put into a frame."""
    assert fitted(mount_board.KIND, small(), "art-too-small", "picture", frame) == ()
    big = product("frame", "frame", width=1000.0, height=1300.0)
    assert fitted(mount_board.KIND, small(what="mirror"), "art-too-small", "picture", big) == ()


def lamp(survey: Survey, **more: Any) -> Survey:
    """A picture light of 300 over the picture's upper edge at 1680."""
    facts = {"name": "lamp", "room": "r", "what": "picture light", "wall": "B", "from_left": 2200.0, "width": 300.0,
             "height": 60.0, "bottom": 2100.0}  # fmt: skip
    return added(survey, "pictures", Hung.model_validate({**facts, **more}))


def test_a_picture_light_comes_down_to_its_frame() -> None:
    """420 above the frame: 165 above it, middle over the frame's middle, for nothing."""
    survey = lamp(small())
    (one,) = fitted(picture_light.KIND, survey, "art-light-off", "lamp")
    assert fields(one, "lamp") == {"from_left": 2200.0, "width": 300.0, "bottom": 1845.0}
    assert left(survey, one, "art-light-off", "lamp") == 0
    assert uses(one) == {}


def test_a_short_picture_light_is_replaced() -> None:
    """150 over a picture of 500 lights a stripe: one of 300 is bought, one of 600 is not."""
    survey = lamp(small(), width=150.0, bottom=1845.0)
    sold = [product(f"l{wide}", "picture light", width=float(wide)) for wide in (200, 300, 600)]
    (one,) = fitted(picture_light.KIND, survey, "art-light-off", "lamp", *sold)
    assert uses(one) == {"l300": 1}
    assert left(survey, one, "art-light-off", "lamp") == 0


def test_a_light_without_a_picture_is_left_alone() -> None:
    """The picture is gone: there is nothing to light."""
    here = site(lamp(small()), "art-light-off", "lamp")
    assert picture_light.KIND.fit(replace(here, survey=lamp(renter()))) == ()
