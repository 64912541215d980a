"""Trees: exact walks, caps, floors, and the same value whichever way they were grown."""

from __future__ import annotations

from itertools import combinations

from budgetfix.optimize.growth import GrownTree, Growth, value
from budgetfix.optimize.problem import Option, Problem
from tests.optimize.worlds import random_world, table_tree


def test_values_are_the_tables() -> None:
    """Every set that keeps its groups is worth what the tables say, asked lazily or at once."""
    world = random_world(7, options=5)
    lazy = Growth(world.problem, asks=0, asks_a_tree=0)
    whole = Growth(world.problem)
    whole.grow_up_front(frozenset(one.id for one in world.problem.options))
    ids = [one.id for one in world.problem.options]
    checked = 0
    for size in range(3):
        for some in combinations(ids, size):
            left = world.left(frozenset(some))
            alone = all(len({one.group for one in world.problem.options if one.id in some}) == size for _ in (0,))
            if left is not None and alone and whole.allowed(frozenset(some)):
                assert value(lazy, some) == value(whole, some) == left
                checked += 1
    assert checked > 5


def test_growth_stops_at_its_cap() -> None:
    """Ten options that all matter: a dear tree is asked no more than the cap, and the rest has floors."""
    options = tuple(Option(f"m{one}") for one in range(10))
    ids = tuple(one.id for one in options)
    table = {frozenset(some): (0, 100 - 7 * size) for size in range(11) for some in combinations(ids, size)}
    problem = Problem(options, (table_tree("t", options, table, ids),))
    growth = Growth(problem, asks=50)
    growth.grow_up_front(frozenset(ids))
    assert growth.asks == 50
    nodes = list(growth.trees[0].leaves(frozenset(ids)))
    assert min(growth.trees[0].floor(node)[1] for node in nodes if node.asked is None) == 30
    assert growth.grow_along(frozenset(ids), frozenset(ids))
    assert not growth.grow_along(frozenset(ids), frozenset(ids))
    assert value(growth, ids) == (0, 30)


def test_along_a_set_no_more_is_asked_than_its_leaf_where_that_is_enough() -> None:
    """Ten options that all matter: the way to a leaf is eleven questions; others beside it wait, and change nothing."""
    options = tuple(Option(f"m{one}") for one in range(10))
    ids = tuple(one.id for one in options)
    table = {frozenset(some): (0, 100 - 7 * size) for size in range(11) for some in combinations(ids, size)}
    problem = Problem(options, (table_tree("t", options, table, ids),))
    short, long = Growth(problem), Growth(problem)
    assert short.grow_along(frozenset(), frozenset(ids), lambda: True)
    assert long.grow_along(frozenset(), frozenset(ids))
    assert short.asks < long.asks
    assert value(short, ids) == value(long, ids) == (0, 30)


def test_a_child_refuses_what_the_chosen_one_excludes() -> None:
    """Below the member that is chosen, the rest of its group is refused."""
    options = (Option("a", "wall"), Option("b", "wall"))
    table = {frozenset[str](): (0, 9), frozenset({"a"}): (0, 5), frozenset({"b"}): (0, 4)}
    tree = GrownTree(table_tree("t", options, table, ("a", "b")), {"a": frozenset("b"), "b": frozenset("a")})
    tree.ask(tree.root)
    assert tree.root.children["a"].refused == frozenset({"b"})
    assert tree.root.children[None].refused == frozenset({"a", "b"})
    assert tree.exact(frozenset({"b"})).points == 4
