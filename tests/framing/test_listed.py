"""Listed faults: reliefs work on what is left, exactly."""

from __future__ import annotations

from fractions import Fraction

from budgetfix.brief.models import Brief, ListedFault
from budgetfix.framing.exclusion import Exclusions
from budgetfix.framing.listed import listed_tree, remaining

F = Fraction


def test_reliefs_work_on_what_is_left() -> None:
    """Half, then half again, leaves a quarter; a harm of 20 % makes it more; never beyond twice."""
    fault = ListedFault(fault="f", points=100)
    assert remaining(fault, (F(1, 2), F(1, 2)), Brief()) == 25
    assert remaining(fault, (F(1, 2), F(-1, 5)), Brief()) == 60
    assert remaining(fault, (F(-1), F(-1)), Brief()) == 200
    assert remaining(fault, (F(1), F(-1)), Brief()) == 0


def test_halves_round_to_even_and_order_does_not_matter() -> None:
    """25 points at a relief of 0.9 leave 2.5, which is 2; 35 leave 3.5, which is 4."""
    assert remaining(ListedFault(fault="f", points=25), (F(9, 10),), Brief()) == 2
    assert remaining(ListedFault(fault="f", points=35), (F(9, 10),), Brief()) == 4
    many = (F(13, 20), F(7, 20), F(-1, 20))
    fault = ListedFault(fault="f", points=977)
    assert remaining(fault, many, Brief()) == remaining(fault, many[::-1], Brief())


def test_a_priority_that_names_the_fault_counts() -> None:
    """A priority of one half halves a listed fault."""
    brief = Brief(priorities=(("f", F(1, 2)),))
    assert remaining(ListedFault(fault="f", points=300), (), brief) == 150


def test_the_tree_branches_group_by_group_and_is_exact_at_its_leaves() -> None:
    """Two alternatives and one free remedy: first the pair, then the other, then a figure."""
    exclusions = Exclusions.of(("a1", "a2", "b"), (("a1", "a2"),), ())
    answers = (("a1", F(1, 2)), ("a2", F(4, 5)), ("b", F(1, 2)))
    tree = listed_tree(ListedFault(fault="f", points=100), Brief(), answers, exclusions)
    none: frozenset[str] = frozenset()
    assert tree.ask(none, none).branch == ("a1", "a2")
    assert tree.ask(frozenset({"a2"}), frozenset({"a1"})).branch == ("b",)
    assert tree.ask(frozenset({"a2", "b"}), frozenset({"a1"})).points == 10
    assert tree.bound(none, none) == (0, 10)
    assert tree.bound(none, frozenset({"a2", "b"})) == (0, 50)


def test_a_listed_hazard_counts_as_hazard_points() -> None:
    """A fault marked safety is in the first figure, not the second."""
    tree = listed_tree(ListedFault(fault="f", points=100, safety=True), Brief(), (), Exclusions.of((), (), ()))
    asked = tree.ask(frozenset(), frozenset())
    assert (asked.hazards, asked.points) == (100, 0)
