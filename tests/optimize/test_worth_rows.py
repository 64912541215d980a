"""Leaves and branches of the trees, read for the options that can be chosen."""

from __future__ import annotations

from budgetfix.optimize.facts import Facts
from budgetfix.optimize.growth import Growth
from budgetfix.optimize.problem import Asked, Option, Problem, Tree
from budgetfix.optimize.worth_rows import Family, families, floors, most_hazards, voice_terms

LAMP, RUG, SHELF = Option("lamp"), Option("rug"), Option("shelf")


def only_below(member: str | None) -> Tree:
    """Asks for the rug first; the shelf has a say only where the rug is chosen ("rug"), or refused (None)."""

    def ask(chosen: frozenset[str], refused: frozenset[str]) -> Asked:
        if "rug" not in chosen | refused:
            return Asked(0, 0, ("rug",))
        if ("rug" in chosen) == (member == "rug") and "shelf" not in chosen | refused:
            return Asked(0, 0, ("shelf",))
        return Asked(2, 5, voices=(3, 0))

    return Tree("t", ask, lambda *_: (1, 4, 2, 0), cheap=True)


def family(tree: Tree, *options: Option, grown: bool = True) -> Family:
    """The one family of a problem with these options."""
    problem = Problem(options, (tree,))
    growth = Growth(problem)
    if grown:
        growth.grow_up_front(frozenset(one.id for one in options))
    (found,) = families(Facts.of(problem), growth)
    return found


def test_branches_on_either_side_are_met() -> None:
    """A question that is asked only with the rug, or only without it, is a branch like the first one."""
    assert family(only_below("rug"), RUG, SHELF).branches == (("rug",), ("shelf",))
    assert family(only_below(None), RUG, SHELF).branches == (("rug",), ("shelf",))


def test_what_cannot_be_chosen_leads_nowhere() -> None:
    """Where there is no rug to be had, what would be asked below it is no branch, and there is one leaf."""
    problem = Problem((LAMP, RUG, SHELF), (only_below("rug"),))
    growth = Growth(problem)
    growth.grow_up_front(frozenset({"lamp", "rug", "shelf"}))
    (found,) = families(Facts.of(Problem((LAMP, SHELF), problem.trees)), growth)
    assert (found.branches, len(found.leaves)) == ((), 1)


def test_what_was_not_asked_yet_is_told_apart() -> None:
    """Before anything is asked the root stands with its floor; when all is asked nothing is unknown."""
    bare = family(only_below("rug"), RUG, SHELF, grown=False)
    assert [(leaf.hazards, leaf.points, leaf.voices) for leaf in bare.unknown] == [(1, 4, (2, 0))]
    assert family(only_below("rug"), RUG, SHELF).unknown == ()


def test_points_in_the_eyes_of_a_voice() -> None:
    """Each leaf counts with what the first of the two sees in it; the second sees nothing, so no leaf counts."""
    found = family(only_below("rug"), RUG, SHELF)
    assert voice_terms((found,), 0) == ((3, "l[0,0]"), (3, "l[0,1]"), (3, "l[0,2]"))
    assert voice_terms((found,), 1) == ()


def test_the_least_and_the_most_of_what_remains() -> None:
    """Over all trees, the best and the worst leaf of each; a tree without an allowed leaf adds nothing."""
    found = family(only_below("rug"), RUG, SHELF)
    nothing = Family(1, (), ())
    assert floors((found, nothing)) == (2, 5)
    assert most_hazards((found, nothing)) == 2
