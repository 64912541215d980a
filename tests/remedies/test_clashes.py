"""Which candidates cannot both be chosen: worked out from their changes, never typed."""

from __future__ import annotations

from typing import Any

import pytest

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.clashes import clashes
from budgetfix.room.items import Hung, Light, Piece
from budgetfix.room.survey import Change, Survey
from tests.inspection.rooms import couple_living, renter
from tests.remedies.bench import added


def doing(id: str, *changes: Change) -> Candidate:
    """A candidate that does just this."""
    return Candidate(id=id, kind="declared", name=id, changes=changes)


def sets(table: Any, item: str, **fields: Any) -> Change:
    """Fields of one thing."""
    return Change(table, item, tuple(sorted(fields.items())))


def pairs(*candidates: Candidate, survey: Survey | None = None) -> tuple[tuple[str, str], ...]:
    """The clashes of these candidates in the renter's room."""
    return clashes(survey or renter(), candidates)


SLIDE = doing("slide", sets("rugs", "rug", from_left=1500.0))
PAD = doing("pad", sets("rugs", "rug", pad=True))


def test_a_rug_can_be_slid_and_padded() -> None:
    """Two candidates that set different fields of one rug go together."""
    assert pairs(SLIDE, PAD) == ()


@pytest.mark.parametrize(
    "other",
    [
        sets("rugs", "rug", from_left=1600.0),
        sets("rugs", "rug", width=2000.0),
        Change("rugs", "rug", remove=True),
    ],
)
def test_a_rug_is_not_laid_twice(other: Change) -> None:
    """Another place, another size, or no rug at all: place and size of a rug only make sense together."""
    assert ("other", "slide") in pairs(SLIDE, doing("other", other), PAD)


def test_taking_away_clashes_with_every_change() -> None:
    """What is taken away can neither be slid nor padded."""
    gone = doing("away", Change("rugs", "rug", remove=True))
    assert pairs(gone, PAD, SLIDE) == (("away", "pad"), ("away", "slide"))


@pytest.mark.parametrize(
    ("one", "other", "clash"),
    [
        ({"rod_width": 1900.0}, {"panel_width": 2000.0}, True),
        ({"rod_height": 2390.0}, {"hem": 30.0}, True),
    ],
)
def test_rod_and_cloth_depend_on_each_other(one: dict[str, float], other: dict[str, float], clash: bool) -> None:
    """A rod from one candidate and panels from another were never sized to each other."""
    found = pairs(doing("a", sets("curtains", "curtain", **one)), doing("b", sets("curtains", "curtain", **other)))
    assert bool(found) is clash


def test_strapping_and_sliding_a_cabinet_go_together() -> None:
    """Whether it is fixed has nothing to do with where it stands."""
    strap = doing("strap", sets("furniture", "shoes", fixed=True))
    assert pairs(strap, doing("slide", sets("furniture", "shoes", from_left=3150.0))) == ()


def test_two_things_on_one_spot_of_floor() -> None:
    """A new basket where another candidate slides the shoe cabinet to: each alone is fine, together they clash."""
    basket = Piece(
        name="basket", room="r", what="basket", wall="D", from_left=3050.0, width=400.0, depth=400.0, height=450.0
    )
    new = doing("basket", Change("furniture", "basket", add=basket))
    near, far = (
        doing(name, sets("furniture", "shoes", from_left=at)) for name, at in (("near", 3150.0), ("far", 2450.0))
    )
    assert pairs(new, near, far) == (("basket", "near"), ("far", "near"))


def test_a_floor_lamp_and_a_piece_on_one_spot() -> None:
    """A lamp stands on the floor too."""
    lamp = Light(
        name="lamp", room="r", what="floor lamp", wall="D", from_left=3100.0, gap=50.0, width=280.0, depth=280.0
    )
    new = doing("lamp", Change("lights", "lamp", add=lamp))
    assert pairs(new, doing("shoes", sets("furniture", "shoes", from_left=3050.0))) == (("lamp", "shoes"),)


def test_two_pictures_on_one_spot_of_wall_and_a_piece_before_one() -> None:
    """Two new pictures over the sofa do not hang in one place; nor behind a cabinet that is stood there."""

    def frame(name: str, wall: str) -> Change:
        hung = Hung(name=name, room="r", wall=wall, from_left=3000.0, width=500.0, height=500.0, bottom=1200.0)
        return Change("pictures", name, add=hung)

    tall = Piece(
        name="tall", room="r", what="cabinet", wall="D", from_left=2900.0, width=600.0, depth=400.0, height=1800.0
    )
    found = pairs(
        doing("a", frame("a", "D")), doing("b", frame("b", "D")), doing("c", frame("c", "B")),
        doing("tall", Change("furniture", "tall", add=tall)),
    )  # fmt: skip
    assert found == (("a", "b"), ("a", "tall"), ("b", "tall"))


def test_rooms_do_not_meet() -> None:
    """The same figures in two rooms are two places."""
    survey = added(couple_living(), "furniture")
    here = Piece(name="x", room="r", what="box", wall="D", from_left=2900.0, width=300.0, depth=300.0, height=300.0)
    there = Piece.model_validate({**dict(here), "name": "y", "room": "elsewhere"})
    one, other = (doing(piece.name, Change("furniture", piece.name, add=piece)) for piece in (here, there))
    assert pairs(one, other, survey=survey) == ()
