"""The record of moves, written and read back; what is none of ours is told apart."""

from __future__ import annotations

import pytest

from budgetfix.base.moves import Link, Move, Stamp, links_of, moves_of, moves_text

MOVES = (
    Move("plan-kept-1.xlsx", None, Stamp(3, 9)),
    Move("elm/plan.xlsx", Stamp(1, 2), Stamp(3, 4)),
    Move("a é", Stamp(0, 0), None),
)


def test_what_was_written_is_read() -> None:
    """Names with folders and accents, files that were not there, files that go."""
    assert moves_of(moves_text(MOVES)) == MOVES
    assert moves_text(()) == b'{"budgetfix moves": []}'


@pytest.mark.parametrize(
    "text",
    [
        "", "[]", "{", "null", '{"moves": []}', '{"budgetfix moves": {}}', '{"budgetfix moves": [], "more": 1}',
        '{"budgetfix moves": [["a", null]]}', '{"budgetfix moves": [[1, null, null]]}',
        '{"budgetfix moves": [["a", [1], null]]}', '{"budgetfix moves": [["a", [1, 2.5], null]]}',
        '{"budgetfix moves": [["a", [true, 1], null]]}', '{"budgetfix moves": [["/etc/a", null, null]]}',
        '{"budgetfix moves": [["../a", null, null]]}', '{"budgetfix moves": [["b/../../a", null, null]]}',
        '{"budgetfix moves": [["", null, null]]}', '{"budgetfix moves": [["a\\u0000", null, null]]}',
        "[" * 100_000,
    ],
)  # fmt: skip
def test_what_is_none_of_ours(text: str) -> None:
    """Other shapes, and names that lead out of the folder."""
    assert moves_of(text.encode()) is None


def test_bytes_that_are_no_text() -> None:
    """A record is never half there; what is, is none."""
    assert moves_of(b"\xff\xfe\x00") is None


def test_links_are_read_back() -> None:
    """With the moves beside them; a record without links has none."""
    links = (Link("quay", 7, 1_700_000_000_000_000_001),)
    assert links_of(moves_text(MOVES, links)) == links
    assert moves_of(moves_text(MOVES, links)) == MOVES
    assert links_of(moves_text(MOVES)) == ()


@pytest.mark.parametrize("links", ["7", "[7]", '[["a", 1]]', '[["a", 1, "b"]]', "[[1, 1, 1]]", '[["a", 1, true]]'])
def test_links_that_are_not_as_they_are_written(links: str) -> None:
    """They are none: moves go nowhere through them."""
    assert links_of(f'{{"budgetfix moves": [], "links": {links}}}'.encode()) == ()
