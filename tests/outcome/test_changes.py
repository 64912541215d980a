"""How everything was and is: every field of every thing has its words."""

from __future__ import annotations

from budgetfix.outcome.book import Drawn, Mark
from budgetfix.outcome.changes import FLAGS, LENGTHS, WORDS, altered, drawn, said
from budgetfix.room.items import ITEM_OF, Curtain, Hung, Piece
from budgetfix.room.survey import Survey
from tests.inspection.rooms import room
from tests.scenarios import EACH, run


def test_every_field_of_a_thing_can_be_said() -> None:
    """A remedy may set any field of the survey, so each but the name has words, and in one list only."""
    fields = {name for kind in ITEM_OF.values() for name in kind.model_fields} - {"name"}
    assert fields == {*LENGTHS, *FLAGS, *WORDS}
    assert len(fields) == len(LENGTHS) + len(FLAGS) + len(WORDS)


def den(**sofa: object) -> Survey:
    """A room with one sofa."""
    facts = {"name": "sofa", "what": "sofa", "plan": (500, 0, 2000, 900), "height": 800.0, "faces": "C", **sofa}
    return room("mm", (4000, 5000), {"ceiling": 2400.0, "furniture": [facts]})


def test_only_what_differs_is_said() -> None:
    """A sofa that moves half a metre: its new place and its old one, and nothing else."""
    shifted = den(plan=(500, 300, 2000, 900))
    (row,) = altered(Drawn(den(), shifted, (Mark("sofa", (3,)),)))
    assert (row.item, row.was, row.now, row.tasks) == ("sofa", "against the wall", "300 mm off the wall", (3,))


def test_what_is_taken_away_or_new_says_where_it_stands() -> None:
    """A thing that goes has no "now", one that comes has no "was"."""
    empty = room("mm", (4000, 5000), {"ceiling": 2400.0})
    (gone,) = altered(Drawn(den(), empty, (Mark("sofa", ()),)))
    assert gone.now == ""
    assert "2000 mm wide" in gone.was
    (come,) = altered(Drawn(empty, den(), (Mark("sofa", ()),)))
    assert come.was == ""
    assert "at wall A" in come.now


def test_flags_speak_both_ways() -> None:
    """Fixed or not fixed: both are said."""
    piece = Piece(name="shelf", what="bookcase", depth=300.0, height=2000.0, fixed=True)
    assert said(piece, ("fixed",), "mm") == "fixed to the wall"
    assert said(None, ("fixed",), "mm") == ""


def test_a_screen_is_strapped_or_not() -> None:
    """How it was and how it is, in the words that the steps use."""
    screen = Hung(name="screen", what="screen", fixing="none")
    assert said(screen, ("fixing",), "mm") == "not strapped"
    assert said(screen.model_copy(update={"fixing": "strap"}), ("fixing",), "mm") == "strapped"
    assert said(Hung(name="print", what="picture", fixing="nail"), ("fixing",), "mm") == "held by nail"


def test_inches_are_told_in_eighths() -> None:
    """Lengths speak the survey's unit, as a tape has it."""
    rod = Curtain(name="c", window="w", rod_height=2165.35, rod_from_left=0.0, rod_width=1.0, panel_width=1.0, hem=0.0)
    assert said(rod, ("rod_height",), "in") == "rod 85 1/4 in above the floor"


@EACH
def test_every_mark_of_a_demo_plan_has_words(name: str) -> None:
    """Nothing that a plan changes is left unsaid, in any of the three demos."""
    book = run(name).book
    assert book.drawn is not None
    rows = altered(book.drawn)
    assert [row.item for row in rows] == [mark.item for mark in book.drawn.marks]
    assert all(row.was != row.now for row in rows)


def test_listed_faults_change_nothing_that_can_be_drawn() -> None:
    """Without a survey there is nothing to tell."""
    assert drawn(None, None, (), ()) is None
