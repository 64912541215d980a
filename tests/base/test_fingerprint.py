from __future__ import annotations

import pytest

from budgetfix.base.fingerprint import fingerprint

CELLS = (("Buy", "rod"), ("Buy", 39.0), ("Do", "rod"))


def test_order_spacing_and_spelling_of_numbers_have_no_say() -> None:
    """Sorted rows, a line break saved as a space, and 39 for 39.0 are the same sheet."""
    same = (("Do", " rod"), ("Buy", 39), ("Buy", "rod\n"))
    assert fingerprint(CELLS) == fingerprint(same)
    assert len(fingerprint(CELLS)) == 16


@pytest.mark.parametrize(
    "other",
    [
        (*CELLS, ("Buy", "a note")),
        CELLS[1:],
        (("Buy", "rods"), *CELLS[1:]),
        (CELLS[0], ("Buy", 39.01), CELLS[2]),
        (("Do", "rod"), ("Do", 39.0), ("Do", "rod")),
    ],
)
def test_anything_typed_changes_it(other: tuple[tuple[str, str | float], ...]) -> None:
    """A note more, a value less, another word, a cent, another sheet."""
    assert fingerprint(other) != fingerprint(CELLS)
