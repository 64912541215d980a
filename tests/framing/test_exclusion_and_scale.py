"""Exclusions and whole-number scales."""

from __future__ import annotations

from fractions import Fraction

from budgetfix.framing.exclusion import Exclusions
from budgetfix.framing.scale import scaled, scales


def test_groups_and_pairs_exclude_both_ways() -> None:
    """Members of a group exclude each other; a pair does too; a stranger is ignored."""
    found = Exclusions.of(("a", "b", "c"), (("a", "b"),), (("b", "c"), ("c", "ghost")))
    assert found.any("b", frozenset({"a"}))
    assert found.any("b", frozenset({"c"}))
    assert not found.any("a", frozenset({"c"}))


def test_a_clique_holds_only_what_excludes_all_before() -> None:
    """a-b and b-c clash but a-c do not: the clique of (a, b, c) is (a, b)."""
    found = Exclusions.of(("a", "b", "c"), (), (("a", "b"), ("b", "c")))
    assert found.clique(("a", "b", "c")) == ("a", "b")
    assert found.clique(("c", "a")) == ("c",)


def test_quantities_become_whole_without_rounding() -> None:
    """0.7 and 2.5 litres are 7 and 25 tenths; a third of a roll needs its own scale."""
    by = scales((("paint", Fraction(7, 10)), ("paint", Fraction(5, 2)), ("roll", Fraction(1, 3))))
    assert by == {"paint": 10, "roll": 3}
    assert scaled((("roll", Fraction(2, 3)), ("paint", Fraction(5, 2))), by) == (("paint", 25), ("roll", 2))
