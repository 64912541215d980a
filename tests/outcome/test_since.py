"""Facts that are new since the last plan, and those that it knew."""

from __future__ import annotations

from budgetfix.outcome.since import Fact, fresh, known_of, largest_first


def test_only_what_is_new_is_a_fact() -> None:
    """What was known is left out, what grew is told by as much as it grew, a pace that changed is told whole."""
    first = (Fact("dearer", "Rug", 700), Fact("sold out", "Lamp"), Fact("pace", amount=118), Fact("gone", "1", 60))
    known = known_of(first)
    assert ("gone", "1", 60) not in known
    assert fresh(first, known) == (Fact("gone", "1", 60),)
    assert fresh(first, ()) == first
    later = (Fact("dearer", "Rug", 900), Fact("dearer", "Pad", 5), Fact("sold out", "Lamp"), Fact("pace", amount=121))
    assert fresh(later, known) == (Fact("dearer", "Rug", 200), Fact("dearer", "Pad", 5), Fact("pace", amount=121))


def test_two_lines_of_one_name_are_known_together() -> None:
    """Seven and two more for rugs were known; with a third rug only that one is new."""
    known = known_of((Fact("dearer", "Rug", 700), Fact("dearer", "Rug", 200)))
    assert fresh((Fact("dearer", "Rug", 700), Fact("dearer", "Rug", 200)), known) == ()
    assert fresh((Fact("dearer", "Rug", 700), Fact("dearer", "Rug", 500)), known) == (Fact("dearer", "Rug", 300),)


def test_the_largest_comes_first() -> None:
    """Money before hours; a pace before minutes, days of delay last."""
    facts = (Fact("late", "Lamp", 90), Fact("longer", "A", 5), Fact("gone", "1", 60), Fact("pace", amount=101))
    order = [fact.kind for fact in largest_first((*facts, Fact("price", "Rug", 1)))]
    assert order == ["price", "pace", "gone", "longer", "late"]
