"""The landlord's note as text and as a sheet: plain words, 72 columns, room to answer and to sign."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

from budgetfix.exports.landlord_text import ANSWER_BY, WAITING, landlord_text
from budgetfix.exports.plan_book import plan_book
from budgetfix.exports.plan_book_landlord import SIGN
from budgetfix.outcome.leased import LandlordNote, Undoing, UndoRow, Work
from budgetfix.pipeline.writing import write_plan
from tests.exports.plan_sheets import opened, sheet, sheet_of
from tests.exports.sample_book import BOOK

ROD = Work(
    "Hang a longer rod, higher", "front room, at the bay window", "6 for wall plugs, usually 6 to 8 mm wide",
    "Extending rod, curtain panels in pairs, and so much else that the line must break somewhere near its end",
    "I take it off the wall, take out 6 plugs, fill and touch up",
)  # fmt: skip
STRAP = Work("Strap a tall piece", "front room, behind the bookcase", "2 for wall plugs", "", "I take out 2 plugs")
NOTE = LandlordNote(
    (ROD,), (STRAP,), (), ("the old rod: kept in the cellar",), ("the radiator",), ("painting",), date(2027, 11, 30)
)
UNDOING = Undoing(
    (UndoRow("rod", "Hang a longer rod, higher", "Take it off", 6, 1, 87), UndoRow("x", "Else", "Pull it", 0, 0, 5)),
    ("Filler", "Paint"), True, 120, date(2027, 11, 30),
)  # fmt: skip
LEASED = replace(BOOK, landlord=NOTE, undoing=UNDOING)
LETTER = """\
Date: ______________________________
Home: ______________________________

To my landlord

I rent your home and would like to change a few things in it. Below is
what I ask you for, what I tell you for your information, and what stays
as it is. The lease and your answer decide.

What I ask you for
------------------
Nothing on this list is done before you have said yes.
Please answer by: ______________________________

1. Hang a longer rod, higher
   Where:      front room, at the bay window
   Holes:      6 for wall plugs, usually 6 to 8 mm wide
   With:       Extending rod, curtain panels in pairs, and so much else
               that the line must break somewhere near its end
   At the end: I take it off the wall, take out 6 plugs, fill and touch
               up
   Answer:     [ ] yes   [ ] no

What you have agreed to already
-------------------------------

1. Strap a tall piece
   Where:      front room, behind the bookcase
   Holes:      2 for wall plugs
   At the end: I take out 2 plugs

What stays as it is
-------------------
- The old rod: kept in the cellar, and put back at the end.
- Not touched: the radiator.
- There will be none of this: painting.

When I move out I make good what is said above, at my own cost. The
lease ends on 30 November 2027.

Tenant:   ______________________________

Landlord: ______________________________
"""


def test_the_letter_word_for_word() -> None:
    """A letter to paste: what is asked, agreed, left alone; a box for yes and for no; two lines to sign."""
    text = landlord_text(NOTE).decode()
    assert text == LETTER
    assert max(map(len, text.splitlines())) <= 72
    assert ANSWER_BY not in landlord_text(replace(NOTE, asked=())).decode()


def test_nothing_is_called_allowed_or_safe() -> None:
    """The lease and the landlord decide; the letter does not."""
    words = landlord_text(NOTE).decode().lower()
    assert not any(word in words for word in ("allowed", "safe", "permitted", "legal"))


def test_the_sheet() -> None:
    """The same as a table: what is asked has empty cells for yes and no, the rest a dash."""
    page = sheet(opened(plan_book(LEASED)), "Landlord")
    rows = [[cell.value for cell in row] for row in page.iter_rows(min_col=2, max_col=8)]
    texts = [row[0] for row in rows]
    assert WAITING in str(texts[1])
    assert rows[3] == ["What", "Where", "Holes", "With", "At the end", "Yes", "No"]
    assert rows[texts.index("Hang a longer rod, higher")][5:] == [None, None]
    assert rows[texts.index("Strap a tall piece")][5:] == ["–", "–"]
    assert "The old rod: kept in the cellar, and put back at the end." in texts
    assert texts[-1] == SIGN


def test_minutes_to_undo() -> None:
    """The sheet Moving out: minutes in all as a live sum, holes, what to keep and until when."""
    live = sheet_of(LEASED, "Moving out", values=False)
    page = sheet_of(LEASED, "Moving out")
    rows = [[cell.value for cell in row] for row in page.iter_rows(min_col=2)]
    (total,) = [row for row in rows if "In all, minutes" in row]
    assert total[-1] == 92
    assert "=SUM(" in str([cell.value for row in live.iter_rows() for cell in row])
    texts = [str(row[0]) for row in rows]
    assert "Putting all back takes about 1 h 32 min, of 2 h at most: our judgement, yours replaces it." in texts
    assert any(text.startswith("Holes to fill: 6 plug holes and 1 pin hole.") for text in texts)
    assert "To keep until then: Filler; Paint, paid for in this plan." in texts
    assert "The lease ends on 30 November 2027." in texts
    assert ["Else", None, None, None, None, "Pull it.", 5] in rows


def test_without_a_lease_nothing_is_added(tmp_path: Path) -> None:
    """No sheet and no file for a landlord; with a note there is one more of each."""
    names = [page.title for page in opened(plan_book(BOOK)).worksheets]
    assert "Landlord" not in names
    assert "landlord.txt" not in [Path(name).name for name in write_plan(tmp_path, BOOK)]
    (tmp_path / "plan.xlsx").unlink()
    assert Path(write_plan(tmp_path, LEASED)[-1]).read_text(encoding="utf-8") == LETTER
