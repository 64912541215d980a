"""What a workbook remembers comes back from its texts as it went in, or is refused with the text that is not right."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from budgetfix.outcome.record_text import NoRecord, Text, as_texts, from_texts
from budgetfix.outcome.so_far import Planned, Remembered
from budgetfix.remedies.candidate import Candidate
from budgetfix.room.items import ITEM_OF, Curtain, Hung, Item, Light, Opening, Piece, Rug, Socket
from budgetfix.room.survey import Change
from tests.exports.remembered_book import KEPT

THINGS: tuple[Item, ...] = (
    Opening(name="window", what="window", width=1200.0, escape=True),
    Curtain(window="window", name="curtain", rod_height=2300.0, rod_from_left=0.5, rod_width=1600.0, panel_width=1.0,
            hem=10.0, stack=None),
    Piece(name="bench", what="bench", depth=400.0, height=450.0, sleepers=2),
    Hung(name="print", what="old holes", things=3),
    Rug(name="rug", depth=1600.0, round=True),
    Light(name="lamp", what="floor lamp", kelvin=2700.0, lead=1800.0),
    Socket(name="socket", wall="A", from_left=300.0),
)  # fmt: skip
"""One of each class that a remedy may add, several with fields that other classes have too."""


def remembered() -> Remembered:
    """The sample's memory."""
    assert KEPT.remembered is not None
    return KEPT.remembered


def test_the_sample_comes_back() -> None:
    """Lines, steps, candidates with their fractions and changes, days and sums."""
    assert from_texts(as_texts(remembered())) == remembered()


def test_added_things_are_of_the_class_of_their_table() -> None:
    """A socket has only fields that a window has as well: the table decides, nothing is guessed."""
    changes = tuple(Change(table, thing.name, add=thing) for table, thing in zip(ITEM_OF, THINGS, strict=True))
    whole = replace(remembered(), candidates=(Planned(Candidate("all", "declared", "All", changes=changes)),))
    found = from_texts(as_texts(whole))
    assert found == whole
    assert [type(change.add) for change in found.candidates[0].candidate.changes] == list(ITEM_OF.values())


@pytest.mark.parametrize(
    "name", ["Étagère, chêne", "棚板 90 cm", "_x0041_ and __x", "quote \" and \\", "tab\tline\nend\r", "\t tab",
             "=1+1"],
)  # fmt: skip
def test_any_name_comes_back_from_plain_letters(name: str) -> None:
    """Texts are ASCII without what a spreadsheet takes for a letter of its own."""
    whole = replace(
        remembered(), candidates=(Planned(Candidate(name, "declared", name), True, ((name, "fixed", True),)),)
    )
    texts = as_texts(whole)
    assert all(one.text.isascii() and one.text.isprintable() and "_x" not in one.text for one in texts)
    assert from_texts(texts) == whole


def test_numbers_keep_their_kind() -> None:
    """A length is no whole number, a switch no number: 1.0, 1 and yes are three things."""
    values = (("a", "x", 1.0), ("a", "y", 1), ("a", "z", True), ("b", "x", None), ("b", "y", "1"))
    whole = replace(
        remembered(), candidates=(Planned(Candidate("c", "k", "n", uses=(("p", Fraction(2, 3)),)), False, values),)
    )
    found = from_texts(as_texts(whole)).candidates[0]
    assert [(type(value), value) for _, _, value in found.was] == [(type(value), value) for _, _, value in values]
    assert found.candidate.uses == (("p", Fraction(2, 3)),)


def test_what_is_not_as_it_was_written_is_refused() -> None:
    """Each text that is broken is named by its place; nothing is made up for what is missing."""
    texts = as_texts(remembered())
    at = next(number for number, one in enumerate(texts) if one.kind == "candidate" and '"add":{' in one.text)
    cut, added = texts[1].text[:-1], texts[at].text
    moved = [added.replace('"pictures"', f'"{table}"') for table in ("rugs", "cars")]
    unread = ((1, cut), (1, '{"id":7}'), *((at, text) for text in ("[1,2]", "[" * 100_000, *moved)))
    broken = [(where, "a text that cannot be read", replace(texts[where], text=text)) for where, text in unread]
    broken.append((2, "no kind of record", Text("thing", "{}")))
    for where, why, text in broken:
        with pytest.raises(NoRecord, match=why) as caught:
            from_texts((*texts[:where], text, *texts[where + 1 :]))
        assert caught.value.at == where
    whole = (
        (texts[1:], "nothing of the plan itself"),
        ((*texts, texts[0]), "the plan itself twice"),
        ((*texts, texts[1]), "'product:rod@harrow' twice"),
    )
    for given, why in whole:
        with pytest.raises(NoRecord, match=why) as caught:
            from_texts(given)
        assert caught.value.at is None
