"""Changes told with a tape, and the kind that is whatever the user says."""

from __future__ import annotations

from budgetfix.remedies.kind import Site
from budgetfix.remedies.kinds.declared import KIND
from budgetfix.remedies.telling import told
from budgetfix.room.survey import Change
from tests.framing.small_jobs import measured_ground

BASE = measured_ground()
assert BASE.survey is not None
ROOM = BASE.survey


def test_heights_from_the_floor_and_distances_from_the_left_corner() -> None:
    """A picture by its lower edge, a rug by its left edge and its distance to the wall."""
    picture = Change("pictures", "print", (("bottom", 980.0), ("from_left", 1500.0)))
    rug = Change("rugs", "rug", (("from_left", 1200.0), ("gap", 700.0)))
    assert told(ROOM, (picture, rug)) == (
        "print: left edge 1500 mm from the left corner of wall B, lower edge 980 mm above the floor; "
        "rug: left edge 1200 mm from the left corner of wall B, 700 mm off the wall"
    )


def test_what_goes_and_what_has_no_measure() -> None:
    """A thing taken away is said so; a strap has no measure to tell."""
    assert told(ROOM, (Change("rugs", "rug", remove=True),)) == "rug: take it away"
    assert told(ROOM, (Change("furniture", "bookcase", (("fixed", True),)),)) == ""


def test_a_declared_remedy_is_sized_by_nobody() -> None:
    """The kind finds nothing by itself, whatever the site."""
    assert KIND.fit(Site(ROOM, "r", "sofa", BASE.catalog, BASE.brief)) == ()
