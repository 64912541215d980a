"""Before handing back: marks cleaned off the walls, the landlord's things put back."""

from __future__ import annotations

from fractions import Fraction

from budgetfix.brief.lease import Lease
from budgetfix.remedies.kinds import clean_marks, put_back
from budgetfix.room.items import Hung
from budgetfix.room.survey import Survey
from tests.inspection.rooms import renter
from tests.remedies.bench import added, fields, fitted, left, product, severity

TIN = product("tin", "paint")


def marked(*sorts: tuple[str, int], bottom: float = 900.0) -> Survey:
    """The renter's room with marks on wall D beside the screen, so many of each sort."""
    marks = [
        Hung(name=f"Marks {at}", room="r", what="mark", group=sort, wall="D", from_left=2500.0 + 100 * at, width=20.0,
             height=20.0, bottom=bottom, things=count)
        for at, (sort, count) in enumerate(sorts, 1)
    ]  # fmt: skip
    return added(renter(), "pictures", *marks)


def test_marks_show_and_are_cleaned() -> None:
    """Four scuffs and a strip count five; cleaned, nothing shows: 8 + 0.7 x 4 x 3 minutes, likely (common practice)."""
    survey = marked(("scuff", 4), ("strip left", 1))
    assert severity(survey, "old-holes-show", "room") == Fraction(5, 8)
    (one,) = fitted(clean_marks.KIND, survey, "old-holes-show", "room", TIN)
    assert left(survey, one, "old-holes-show", "room") == 0
    assert one.work[0].likely == 17
    assert one.uses == ()
    assert "4 x scuff on wall D" in one.work[0].text
    assert "warm it and pull slowly" in one.work[0].text
    assert fields(one, "Marks 1") == {"things": 0}


def test_stains_and_patches_are_touched_up() -> None:
    """Each takes a twenty-fifth of a tin; without a tin in the catalogue it is done with what is at hand."""
    survey = marked(("stain", 2), ("painted patch", 1))
    (one,) = fitted(clean_marks.KIND, survey, "old-holes-show", "room", TIN)
    assert one.uses == (("tin", Fraction(3, 25)),)
    assert "feathered out" in one.work[0].text
    (bare,) = fitted(clean_marks.KIND, survey, "old-holes-show", "room")
    assert bare.uses == ()


def test_high_marks_need_a_ladder() -> None:
    """A stain at 2.3 m is cleaned from a ladder; one mark is called one."""
    (one,) = fitted(clean_marks.KIND, marked(("stain", 1), bottom=2300.0), "old-holes-show", "room", TIN)
    assert one.hazards == ("ladder",)
    assert one.name == "Clean 1 mark off the walls"


def test_holes_are_no_matter_of_cleaning() -> None:
    """Where there are only holes, filling is offered and cleaning is not."""
    hole = Hung(name="Marks 1", room="r", what="old holes", wall="D", from_left=2500.0, width=20.0, height=20.0,
                bottom=900.0, things=2, fixing="nail")  # fmt: skip
    assert fitted(clean_marks.KIND, added(renter(), "pictures", hole), "old-holes-show", "room") == ()


def test_the_landlord_s_things_go_back() -> None:
    """One for each thing that is kept and that the survey knows; its text says where it is taken from."""
    lease = Lease(keep=(("curtain", "in the cellar"), ("ghost", "in the attic"), ("rug", "in the wardrobe")))
    made = put_back.put_back(renter(), lease)
    assert [one.id for one in made] == ["put-back/curtain", "put-back/rug"]
    curtain, rug = made
    assert curtain.work[0].text.startswith("Take the landlord's curtain out of the cellar")
    assert (curtain.work[0].likely, rug.work[0].likely) == (30, 20)
    assert curtain.answers == (("not back: curtain", Fraction(1)),)
    assert (curtain.hazards, rug.hazards) == (("ladder",), ())
    assert "ladder" in curtain.cares[0]
    assert rug.cares == ()
