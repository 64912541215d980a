"""What a lease adds to a plan's book: rows for undoing it, and a landlord's note in which nothing must be explained."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import date
from fractions import Fraction
from typing import Any

import pytest

from budgetfix.brief.lease import Lease
from budgetfix.brief.models import Brief
from budgetfix.catalog.models import Catalog, Product
from budgetfix.framing.frame import Ground
from budgetfix.outcome.lease_rows import landlord_note, undoing
from budgetfix.outcome.leased import Undoing, UndoRow, Work
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.candidate import Work as Step
from budgetfix.room.items import Hung, Piece
from budgetfix.room.survey import Change
from tests.inspection.rooms import renter

SHOP = Catalog(
    products=(
        Product(product="p8", name="Extending rod", price_minor=4200),
        Product(product="p26", name="Filler", what="filler", price_minor=600),
        Product(product="p27", name="Touch-up paint", what="paint", price_minor=1400),
    )
)
HOUR = (Step("", 60, 60, 60, 60),)
ROD = Candidate(
    "m9", "longer-rod", "Rod 160-300 at 2390", changes=(Change("curtains", "curtain", (("rod_width", 1900.0),)),),
    uses=(("p8", Fraction(1)),), spends=(("holes", Fraction(6)),), leaves="plugs", work=HOUR,
)  # fmt: skip
STRAP = Candidate(
    "m18", "strap", "Strap the bookcase", changes=(Change("furniture", "bookcase", (("fixed", True),)),),
    spends=(("holes", Fraction(2)),), leaves="plugs", work=HOUR,
)  # fmt: skip
PRINTS = Candidate(
    "m10", "declared", "Hang two prints", leaves="strips", work=HOUR,
    changes=(Change("pictures", "a", add=Hung(name="a", room="r", wall="D")),
             Change("pictures", "b", add=Hung(name="b", room="r", wall="B", over="sofa"))),
)  # fmt: skip
RUG = Candidate("m4", "lay-rug", "Lay the rug", changes=(Change("rugs", "rug", (("gap", 700.0),)),), work=HOUR)
PLAN = (PRINTS, ROD, STRAP, RUG)


def ground(lease: Lease | None, *, rent: bool = True, catalog: Catalog = SHOP) -> Ground:
    """The renter's room, rented or not, under a lease."""
    home = renter().household.model_copy(update={"rent": rent})
    survey = renter().model_copy(update={"household": home})
    return Ground(survey, Brief(lease=lease), catalog, (), (), (), ())


def lease(**more: Any) -> Lease:
    """A lease that gives leave for plugs and was not asked about rods yet."""
    said = {"leave": (("curtain rods", "asked"), ("longer-rod", "asked"), ("plugs", "given")), **more}
    return Lease.model_validate(said)


def test_undoing_row_by_row() -> None:
    """What leaves nothing has no row; minutes, holes and goods add up; the old rod goes back."""
    found = undoing(ground(lease(keep=(("curtain", "in the cellar"),), ends=date(2027, 11, 30))), PLAN)
    assert found == Undoing(
        (
            UndoRow("m10", "Hang two prints", "Pull the strips slowly along the wall", 0, 0, 10),
            UndoRow(
                "m9", "Rod 160-300 at 2390",
                "Take it off the wall, take out 6 plugs, fill and touch up; put the old rod of the curtain back",
                6, 0, 10 + 6 * 12 + 5 + 30,
            ),
            UndoRow("m18", "Strap the bookcase", "Take it off the wall, take out 2 plugs, fill and touch up", 2, 0, 39),
        ),
        ("Filler", "Touch-up paint"), False, None, date(2027, 11, 30), ("curtain",),
    )  # fmt: skip
    assert (found.minutes, found.plugs, found.pins) == (166, 8, 0)
    assert undoing(ground(None), PLAN) is None


def test_the_note_asks_for_what_is_not_agreed() -> None:
    """The rod is asked for with its place, holes, goods and end; the strap is agreed; strips are told."""
    note = landlord_note(ground(lease(keep=(("curtain", "in the cellar"), ("radiator", "in place")))), PLAN)
    assert note is not None
    assert note.asked == (
        Work(
            "Hang a longer rod, higher, with its panels", "r, at the win", "6 for wall plugs, usually 6 to 8 mm wide",
            "Extending rod",
            "I take it off the wall, take out 6 plugs, fill and touch up; I put the old rod of the curtain back",
        ),
    )  # fmt: skip
    (agreed,) = note.agreed
    assert (agreed.what, agreed.where) == ("Strap the bookcase", "r, behind the bookcase")
    (told,) = note.told
    assert told.what == "Hang two prints"
    assert told.where == "r, on the wall across from the door-kitchen; r, above the sofa"
    assert told.holes == "none: adhesive strips that come off again"
    assert note.kept == ("the old rod of the curtain: kept in the cellar",)
    assert note.untouched == ("the radiator",)


@pytest.mark.parametrize(
    ("made", "what"),
    [
        ({}, "Strap the bookcase"),
        ({"name": "m18"}, "Strap a tall piece to the wall"),
        ({"name": "Strap it, 1200 high"}, "Strap a tall piece to the wall"),
        ({"name": "Strap what stands at wall B"}, "Strap a tall piece to the wall"),
        ({"own": True}, "Strap a tall piece to the wall"),
        ({"kind": "declared", "name": "Strap it at wall B"}, "Strap it at wall B"),
    ],
)
def test_work_is_called_what_the_tenant_calls_it(made: dict[str, Any], what: str) -> None:
    """The catalogue's own name; the kind's where there is none, or one with figures or a wall's letter in it."""
    note = landlord_note(ground(lease()), (replace(STRAP, **made),))
    assert note is not None
    assert note.agreed[0].what == what


@pytest.mark.parametrize(
    ("spends", "holes"),
    [
        ({"pins": 1}, "1 pin hole, about 1 mm wide"),
        ({"holes": 1}, "1 for a wall plug, usually 6 to 8 mm wide"),
        ({"holes": 2, "pins": 3}, "2 for wall plugs, usually 6 to 8 mm wide, and 3 pin holes, about 1 mm wide"),
    ],
)
def test_holes_in_words(spends: dict[str, int], holes: str) -> None:
    """One hole is one, and each sort says how wide it is."""
    amounts = tuple((name, Fraction(count)) for name, count in spends.items())
    one = replace(RUG, spends=amounts, leaves="plugs" if "holes" in spends else "pins")
    note = landlord_note(ground(lease()), (one, STRAP))
    assert note is not None
    assert holes in [work.holes for work in (*note.agreed, *note.told)]


def test_no_note_where_nobody_needs_one() -> None:
    """An owner's home, a brief without a lease, and a plan that leaves nothing in the walls need no note."""
    assert landlord_note(ground(lease(), rent=False), PLAN) is None
    assert landlord_note(ground(None), PLAN) is None
    assert landlord_note(ground(lease()), (RUG, PRINTS)) is None
    bare = Ground(None, Brief(lease=lease()), SHOP, (), (), (), ())
    assert landlord_note(bare, PLAN) is None


def test_what_the_lease_forbids_is_said_as_never_done() -> None:
    """Classes of work by their plain words; kinds and ids mean nothing to a landlord and are not named."""
    note = landlord_note(ground(lease(forbids=("painting", "m3", "hang-blind", "screens on walls"))), PLAN)
    assert note is not None
    assert note.never == ("painting", "screens hung on walls")


def test_nothing_needs_a_key() -> None:
    """No id, no letter of a wall, no slug and no points stand in any word of the note."""
    note = landlord_note(ground(lease(keep=(("curtain", "in the cellar"),), forbids=("painting",))), PLAN)
    words = str(note)
    assert not re.search(r"\bm\d+\b|\bp\d+\b|wall [A-D]\b|points|longer-rod|remedy", words)


def test_places_in_a_room() -> None:
    """A shelf is told by the wall's door or window, a hook rail by itself, a light by its name."""
    rail = Candidate(
        "x", "declared", "A rail", leaves="plugs", work=HOUR,
        changes=(Change("furniture", "rail", add=Piece(name="rail", room="r", what="rail", depth=9.0, height=9.0)),
                 Change("pictures", "shelf", add=Hung(name="shelf", room="r", wall="A")),
                 Change("lights", "ceiling", (("lumens", 900.0),))),
    )  # fmt: skip
    note = landlord_note(ground(lease()), (rail,))
    assert note is not None
    assert note.agreed[0].where == "r, behind the rail; r, on the wall with the door-hall; r, at the ceiling"
