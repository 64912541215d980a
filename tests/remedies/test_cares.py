"""Cautions: every kind carries its hazards, a lease is never overruled, a ladder leans as the published rule says."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from budgetfix.remedies.candidate import Leaves
from budgetfix.remedies.cares import (
    CARES,
    LEASE,
    PINS_OR_STRIPS,
    TOGETHER,
    cares_for,
    foot_out,
    lean_degrees,
    support_height,
)
from budgetfix.remedies.kind import Kind, kind_page
from budgetfix.remedies.kinds import cable_cover, cord_cleat, lay_rug, longer_rod, rehang_picture
from budgetfix.remedies.old_paint import old_paint_care
from budgetfix.remedies.registry import KINDS
from budgetfix.room.survey import Household
from tests.inspection.rooms import RENTER as FACTS
from tests.inspection.rooms import renter, room
from tests.remedies.bench import fitted, product
from tests.remedies.test_picture_kinds import high
from tests.remedies.test_users_remedies import PAIR, ROD, users

HAZARDS: dict[str, tuple[str, ...]] = {
    "bigger-picture": ("pins",),
    "brighter-lamps": ("ladder", "lamp"),
    "cable-channel": ("cord", "strips"),
    "cable-cover": ("cord",),
    "center-bed": ("lifting",),
    "clamp-rod": (),
    "clean-marks": (),
    "clear-surface": (),
    "clip-rings": ("ladder",),
    "cord-cleat": ("cord", "drill"),
    "corner-filler": (),
    "declared": (),
    "deeper-shade": ("ladder", "lamp"),
    "electrician": ("wire",),
    "fill-holes": (),
    "filler-basket": (),
    "float-seating": ("lifting",),
    "floor-lamp": ("cord",),
    "gather-pictures": ("pins", "strips"),
    "hang-blind": ("cord", "drill", "ladder"),
    "headboard": ("lifting",),
    "hem-tape": (),
    "hooks-and-mat": (),
    "lay-rug": ("lifting",),
    "lean-picture": (),
    "longer-rod": ("drill", "ladder"),
    "lower-screen": ("drill", "lifting"),
    "make-bed": (),
    "mount-board": ("pins",),
    "move-heater": ("heat",),
    "move-hung": ("drill",),
    "move-lamp": ("cord",),
    "move-picture": ("pins",),
    "move-piece": (),
    "move-table-to-seat": (),
    "neutral-prints": (),
    "new-coffee-table": (),
    "new-panels": ("ladder",),
    "nightstands": (),
    "paint-wall": ("ladder",),
    "pendant-cord": ("ladder", "lamp"),
    "picture-light": ("pins",),
    "plug-in-sconces": ("cord", "drill"),
    "put-back": (),
    "rearrange": ("lifting",),
    "rehang-picture": ("pins",),
    "rehang-rod": ("drill", "ladder"),
    "rehang-sconces": ("cord", "drill"),
    "relevel-pictures": ("pins",),
    "respace-pictures": ("pins",),
    "rod-across": ("drill", "ladder"),
    "rug-pad": (),
    "rug-under": ("lifting",),
    "screen-strap": ("tipping",),
    "screw-picture": ("drill",),
    "seat-to-screen": ("lifting",),
    "second-picture": ("pins",),
    "side-table": (),
    "slide-rug": (),
    "slide-screen": ("cord", "lifting"),
    "slide-table": (),
    "spare-chair": (),
    "strap": ("drill", "tipping"),
    "swag-pendant": ("drill", "ladder", "lamp"),
    "table-lamp": ("cord",),
    "table-under-pendant": ("lifting",),
    "take-away": ("lifting",),
    "tie-cables": ("cord",),
    "turn-rug": (),
    "turn-seat": (),
    "warm-lamps": ("ladder", "lamp"),
    "wider-console": ("cord", "lifting"),
}
"""What can hurt someone in each kind of work. What depends on the room (tall pieces, heaters, high frames, known
weights) comes in on top, where it is so: see `following` and `lifting`."""
LEAVES: dict[Leaves, tuple[str, ...]] = {
    "pins": ("bigger-picture", "gather-pictures", "mount-board", "move-picture", "picture-light", "rehang-picture",
             "relevel-pictures", "respace-pictures", "second-picture"),
    "plugs": ("cord-cleat", "hang-blind", "longer-rod", "lower-screen", "move-hung", "plug-in-sconces",
              "rehang-rod", "rehang-sconces", "rod-across", "screw-picture", "strap"),
    "peels off": ("cable-channel", "cable-cover"),
    "asks leave": ("electrician", "paint-wall", "swag-pendant"),
}  # fmt: skip
WORDS = {"drill", "ladder", "lifting", "tipping", "cord", "heat", "wire", "lamp", "pins", "strips"}


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.kind)
def test_each_kind_carries_its_hazards(kind: Kind) -> None:
    """Ladders, drills, tipping, cords, heat, lifting, wires: the table above, kind by kind; and known words only."""
    assert tuple(sorted(kind.hazards)) == HAZARDS[kind.kind]
    assert set(kind.hazards) <= WORDS
    assert kind.people == 1 or "lifting" in kind.hazards or "drill" in kind.hazards


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.kind)
def test_each_kind_says_what_it_leaves_in_the_wall(kind: Kind) -> None:
    """The last column of the trade's table; what drills leaves plugs; the page says it, with the lease's word."""
    wanted = next((leaves for leaves, kinds in LEAVES.items() if kind.kind in kinds), "nothing")
    assert kind.leaves == wanted
    assert ("drill" in kind.hazards) is (kind.holes > 0)
    assert kind.holes == 0 or kind.leaves in ("plugs", "asks leave")
    page = kind_page(kind)
    assert f"\nLeaves in the wall: {kind.leaves}." in page
    assert ("your lease decides" in page) is (kind.leaves != "nothing")


@pytest.mark.parametrize("word", sorted(CARES))
def test_a_caution_is_short_and_promises_nothing(word: str) -> None:
    """One or two sentences that people read; nothing is ever called safe or legal."""
    words = CARES[word]
    assert words.endswith(".")
    assert len(words) <= 140
    assert not {"safe", "legal", "allowed"} & set(words.lower().replace(".", "").split())


@pytest.mark.parametrize("words", [*LEASE.values(), PINS_OR_STRIPS])
def test_the_lease_always_decides(words: str) -> None:
    """What is commonly tolerated and what commonly needs leave: both end with the lease."""
    assert words == "" or words.endswith("your lease decides.")
    assert "safe" not in words


@pytest.mark.parametrize(
    ("leaves", "says"),
    [
        ("plugs", "Plugs over 6 mm, and any hole in tile, stone, ceilings or doors, commonly need leave"),
        ("asks leave", "Painting, wall mounts, and changing lights, locks or blinds commonly need leave"),
        ("pins", "Pins are commonly tolerated"),
        ("strips", "on sound paint, not on wallpaper or on paint younger than a week"),
        ("peels off", "commonly tolerated"),
        ("nothing", ""),
    ],
)
def test_renters_hear_what_commonly_needs_leave(leaves: Leaves, says: str) -> None:
    """Common practice, as the trade's rules give it; who owns the home hears nothing of leases."""
    renting, owning = (cares_for((), Household(rent=rent, before_1978=False), leaves=leaves) for rent in (True, False))
    assert owning == ()
    assert len(renting) == (1 if says else 0)
    assert all(says in care for care in renting)


def test_pins_or_strips_are_one_sentence() -> None:
    """Where strips would do as well, one caution speaks of both."""
    found = cares_for(("pins", "strips"), Household(rent=True), leaves="pins")
    assert found == (CARES["strips"], PINS_OR_STRIPS)


@pytest.mark.parametrize(
    ("home", "wanted"),
    [
        ({"before_1978": True, "rent": True}, ["paint", "lease"]),
        ({"before_1978": None, "rent": False}, ["paint"]),
        ({"before_1978": False, "rent": True}, ["lease"]),
        ({"before_1978": False, "rent": False}, []),
    ],
)
def test_drilling_minds_old_paint_and_the_lease(home: dict[str, Any], wanted: list[str]) -> None:
    """A house whose year nobody knows counts as old; a lease decides where one rents."""
    household = Household(**home)
    words = {"paint": old_paint_care(household), "lease": LEASE["plugs"]}
    assert cares_for(("drill",), household, leaves="plugs") == (CARES["drill"], *(words[word] for word in wanted))


def test_two_people_are_spoken_to_as_two() -> None:
    """One lays a small rug alone and is not told to lift with two; two are told to lift together."""
    home = Household(before_1978=False)
    assert cares_for(("lifting",), home, 2) == (TOGETHER,)
    assert cares_for(("lifting",), home, 1) == (CARES["lifting"],)
    small = product("small", "rug", width=1580.0, depth=2280.0)
    large = product("large", "rug", width=1970.0, depth=2950.0)
    for sold, people, care in ((small, 1, CARES["lifting"]), (large, 2, TOGETHER)):
        found = fitted(lay_rug.KIND, renter(), "rug-misses-seats", "rug", sold)
        assert {one.work[0].people for one in found} == {people}
        assert all(care in one.cares for one in found)


def test_a_leaning_ladder_stands_a_quarter_of_its_working_length_out() -> None:
    """S1, 29 CFR 1926.1053(b)(5)(i), and erratum 15: of 10 ft 2.5 ft, at 75.5 degrees, the support 9.68 ft up."""
    assert foot_out(10.0) == 2.5
    assert lean_degrees() == pytest.approx(75.5, abs=0.05)
    assert support_height(10.0) == pytest.approx(9.68, abs=0.005)
    assert support_height(10.0) / 4 != pytest.approx(foot_out(10.0)), "a quarter of the height would be too steep"


def test_the_ladder_caution_tells_the_two_sorts_apart() -> None:
    """A step ladder is opened and never leaned; of a leaning one the quarter is named, of its working length."""
    assert "Open a step ladder fully, never lean it" in CARES["ladder"]
    assert "a quarter of its working length" in CARES["ladder"]


def rented() -> Any:
    """The renter's room, as one that is rented, built nobody knows when."""
    return room("mm", (3600.0, 4500.0), FACTS, rent=True)


def test_a_candidate_carries_what_it_leaves() -> None:
    """A rod leaves plugs and says so; a picture pins; a clean move nothing."""
    rods = fitted(longer_rod.KIND, rented(), "rod-too-narrow", "win", ROD, PAIR)
    assert {one.leaves for one in rods} == {"plugs"}
    assert all(LEASE["plugs"] in one.cares for one in rods)
    (picture,) = fitted(rehang_picture.KIND, high(), "art-off-height", "picture")
    assert picture.leaves == "pins"
    assert LEASE["pins"] not in picture.cares, "that room is owned"
    assert (cable_cover.KIND.leaves, cord_cleat.KIND.leaves) == ("peels off", "plugs")


@pytest.mark.parametrize(
    ("remedy", "leaves"),
    [
        ({"kind": "longer-rod", "on": "curtain", "set": (("rod_width", 1900.0),)}, "plugs"),
        ({"kind": "gather-pictures", "uses": (("tape", 1),)}, "strips"),
        ({"kind": "gather-pictures"}, "pins"),
        ({"spends": (("holes", 2),)}, "plugs"),
        ({"spends": (("kg", 12),)}, "nothing"),
    ],
)
def test_a_users_remedy_leaves_what_its_kind_leaves(remedy: dict[str, Any], leaves: Leaves) -> None:
    """By its kind, by the strips that it uses, or by the holes that it spends; and the lease speaks accordingly."""
    exact = {key: tuple((name, Fraction(units)) for name, units in value) for key, value in remedy.items()
             if key in ("uses", "spends")}  # fmt: skip
    one = users(rented(), ROD, product("tape", "strips"), **{**remedy, **exact})
    assert one.leaves == leaves
    assert [care for care in one.cares if care in LEASE.values() or care == PINS_OR_STRIPS] != [] or leaves == "nothing"
