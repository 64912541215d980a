"""What a lease has to do with a remedy: its classes of work, what is ruled out, whose leave it needs, what is kept."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from budgetfix.brief.lease import CLASSES, Lease
from budgetfix.catalog.models import Catalog, Product
from budgetfix.remedies.candidate import Candidate, Work
from budgetfix.remedies.cares import LEASE
from budgetfix.remedies.leases import LEAVE_CARES, Under
from budgetfix.remedies.registry import KINDS
from budgetfix.room.items import Hung, Piece
from budgetfix.room.survey import Change
from tests.inspection.rooms import renter

WALL_PAINT = Product(product="white", what="wall paint", price_minor=900)
SCREEN = Hung(name="new screen", what="screen", wall="D", width=900, height=500, bottom=900, fixing="screws")
SHELF = Hung(name="new shelf", what="shelf", wall="D", width=900, height=30, bottom=1500, fixing="screws")
RAIL = Piece(name="new rail", what="coat rack", depth=100, height=1700, hangs=True)
HOLES = (("holes", Fraction(2)),)


def one(kind: str = "declared", **more: Any) -> Candidate:
    """A remedy of a kind that does nothing but what is said."""
    return Candidate("m1", kind, "Do it", **more)


def under(lease: Lease | None = None, **more: Any) -> Under:
    """The renter's room under a lease."""
    return Under(lease or Lease(**more), Catalog(products=(WALL_PAINT,)), renter())


def added(thing: Hung | Piece) -> Change:
    """A thing put up."""
    return Change("pictures" if isinstance(thing, Hung) else "furniture", thing.name, add=thing)


@pytest.mark.parametrize(
    ("made", "classes"),
    [
        (one(), ()),
        (one("paint-wall", leaves="asks leave"), ("painting",)),
        (one(uses=(("white", Fraction(1)),)), ("painting",)),
        (one(spends=HOLES), ("plugs",)),
        (one(leaves="pins"), ("pins",)),
        (one(leaves="strips"), ("strips",)),
        (one(leaves="peels off"), ("things that peel off",)),
        (one(leaves="plugs", hazards=("drill",)), ("plugs", "drilling")),
        (one("swag-pendant", leaves="asks leave"), ("holes in ceilings", "lampholders and shades")),
        (one(spends=HOLES, changes=(added(SCREEN),)), ("plugs", "screens on walls")),
        (one(changes=(Change("pictures", "screen", (("bottom", 500.0),)),)), ()),
        (one(leaves="plugs", changes=(added(SHELF),)), ("plugs", "shelves and rails")),
        (one(leaves="plugs", changes=(added(RAIL),)), ("plugs", "shelves and rails")),
        (one(changes=(Change("furniture", "bookcase", (("fixed", True),)),)), ("furniture fixed to walls",)),
        (
            one(leaves="plugs", changes=(Change("curtains", "curtain", (("rod_width", 1900.0),)),)),
            ("plugs", "curtain rods"),
        ),
        (one("clamp-rod", changes=(Change("curtains", "curtain", (("rod_width", 1900.0),)),)), ()),
        (one("hang-blind", leaves="plugs"), ("plugs", "blinds")),
        (one("electrician", leaves="asks leave", hazards=("wire",)), ("hard-wired lights",)),
        (one("deeper-shade"), ("lampholders and shades",)),
    ],
)
def test_classes_of_work(made: Candidate, classes: tuple[str, ...]) -> None:
    """Each class comes from what a remedy leaves, its kind, its tools and what it changes (common practice): a screen
    on its bench is no screen on a wall, a rod that is clamped leaves no holes.
    """
    assert under().classes(made) == classes
    assert set(classes) <= set(CLASSES)


def test_every_class_is_some_kind_s_or_somebody_s() -> None:
    """All that usually leaves plugs or asks leave belongs to a class that a lease may name."""
    for kind in KINDS:
        if kind.leaves != "nothing":
            made = one(kind.kind, leaves=kind.leaves, hazards=kind.hazards, tools=kind.tools)
            assert under().classes(made), kind.kind


def test_what_is_forbidden() -> None:
    """By class, by kind and by id, in words that a person can read back in the lease."""
    made = one("longer-rod", leaves="plugs")
    assert under(forbids=("plugs",)).why_not(made) == "your lease forbids holes for plugs"
    assert under(forbids=("longer-rod",)).why_not(made).startswith("your lease forbids this: hang a longer rod")
    assert under(forbids=("m1",)).why_not(made) == "your lease forbids it"
    assert under(forbids=("painting", "strap", "m2")).why_not(made) == ""
    grouped = replace(made, pick_one="g1")
    assert under(forbids=("g1",)).why_not(grouped) == "your lease forbids it"


def test_what_the_landlord_said() -> None:
    """Of the remedy first, else of its kind, else the worst that was said of its classes; no is no."""
    made = one("longer-rod", leaves="plugs", hazards=("drill",))
    assert under().leave(made) == (True, None)
    assert under(leave=(("plugs", "given"),)).leave(made) == (True, "given")
    assert under(leave=(("drilling", "asked"), ("plugs", "given"))).leave(made) == (True, "asked")
    assert under(leave=(("longer-rod", "given"), ("plugs", "refused"))).leave(made) == (True, "given")
    assert under(leave=(("longer-rod", "given"), ("m1", "refused"))).why_not(made) == "the landlord said no"
    assert under().leave(one(leaves="pins")) == (False, None)
    assert under(leave=(("pins", "asked"),)).leave(one(leaves="pins")) == (True, "asked")


def test_leave_is_a_care() -> None:
    """What is planned without leave says so; the general word about leases gives way to what was said."""
    made = one(leaves="plugs", cares=("Mind the wires.", LEASE["plugs"]))
    assert under().told(made).cares == ("Mind the wires.", LEAVE_CARES[None])
    assert under(leave=(("plugs", "asked"),)).told(made).cares == ("Mind the wires.", LEAVE_CARES["asked"])
    assert LEAVE_CARES["asked"] == "Only with the landlord's leave: asked, no answer yet."
    plain = one(leaves="pins", cares=(LEASE["pins"],))
    assert under().told(plain) == plain


def test_what_is_kept() -> None:
    """Replaced, taken away, or with a part of it exchanged: the old thing goes where it is kept, and nowhere else."""
    keep = under(keep=(("curtain", "in the cellar"), ("ceiling light", "in the wardrobe")))
    asks = "Hang it; say where the old cloth and the rug will go: another room, storage, sold or given away; steam it"
    cloth = Change("curtains", "curtain", (("panel_width", 1400.0),))
    both = one(changes=(cloth, Change("rugs", "rug", remove=True)), work=(Work(asks, 5, 5, 5, 5),))
    told = keep.told(both)
    assert told.cares == ("Keep the old cloth of the curtain in the cellar: it goes back when you move out.",)
    assert told.work[0].text == (
        "Hang it; say where the rug will go: another room, storage, sold or given away; steam it"
    )
    alone = replace(both, changes=(cloth,), work=(Work(asks.replace(" and the rug", ""), 5, 5, 5, 5),))
    assert keep.told(alone).work[0].text == "Hang it; steam it"
    away = asks.replace("another room, storage, sold or given away", "put away with the owner's things")
    listing = replace(both, work=(Work(away, 5, 5, 5, 5),))
    assert keep.told(listing).work[0].text == away.replace("the old cloth and the rug", "the rug")
    gone = one(changes=(Change("curtains", "curtain", remove=True),))
    assert keep.told(gone).cares == ("Keep the curtain in the cellar: it goes back when you move out.",)
    lamps = one(changes=(Change("lights", "ceiling light", (("lumens", 1055.0),)),), uses=(("lamp", Fraction(1)),))
    assert keep.told(lamps).cares == (
        "Keep the old bulb of the ceiling light in the wardrobe: it goes back when you move out.",
    )
    shade = replace(lamps, changes=(Change("lights", "ceiling light", (("bottom", 1900.0), ("lumens", 1055.0))),))
    assert keep.told(shade).cares == (
        "Keep what comes off the ceiling light in the wardrobe: it goes back when you move out.",
    )
    assert keep.told(replace(lamps, uses=())).cares == ()


def test_without_a_survey() -> None:
    """A job of listed faults has no things: kinds, ids and what is left in the walls still count."""
    bare = Under(Lease(forbids=("plugs",), keep=()), Catalog(), None)
    assert bare.why_not(one(spends=HOLES)) == "your lease forbids holes for plugs"
    assert bare.told(one(changes=(added(SHELF),))) == one(changes=(added(SHELF),))
