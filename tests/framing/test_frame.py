"""Candidates and a brief become one integer problem."""

from __future__ import annotations

from fractions import Fraction

from budgetfix.brief.models import Brief, Hours, Person
from budgetfix.framing.frame import allowed, frame, musts
from budgetfix.framing.options import ERRAND, barred, errands_of, first_session
from budgetfix.remedies.fit import candidates
from tests.framing.small_jobs import listed_ground

BASE = listed_ground()
FITTED = candidates(None, BASE.catalog, BASE.brief, ())


def test_quantities_are_whole_and_errands_are_options_that_goods_need() -> None:
    """0.7 of a tin of 2.5 becomes 7 of 25; the paint needs the way to the mill; the errand is an option."""
    problem = frame(BASE, FITTED, ()).problem
    options = {option.id: option for option in problem.options}
    assert options["paint"].uses == (("tin", 7),)
    assert problem.products[0].pack == 25
    assert options["paint"].needs == (ERRAND + "mill",)
    assert options[ERRAND + "mill"].steps[0].minutes == 15
    assert options["sort"].needs == ()


def test_the_contingency_is_held_back_first() -> None:
    """Ten percent of 60.00 leaves 54.00 to spend."""
    brief = BASE.brief
    held = Brief.model_validate({**dict(brief), "contingency_share": Fraction(1, 10)})
    assert frame(listed_ground(held), FITTED, ()).problem.budget_minor == 5400


def test_never_names_ids_groups_kinds_and_products() -> None:
    """Each word rules out what it names, and nothing else."""
    for word, gone in (("sort", {"sort"}), ("wall", {"paint", "wash"}), ("tin", {"paint"})):
        kept = allowed(FITTED, Brief(never=(word,)))
        assert {one.id for one in FITTED} - set(kept) == gone


def test_must_takes_a_group_as_one_of_its_members_and_all_as_one_of_each() -> None:
    """`must: [wall, sort]` asks for one of the wall's remedies and for sort; `all` for one of each group."""
    kept = allowed(FITTED, Brief())
    assert musts(Brief(must=("wall", "sort")), kept) == (("paint", "wash"), ("sort",))
    assert musts(Brief(must_all=True), kept) == (("paint", "wash"), ("shelf",), ("sort",))


def test_a_clash_excludes_both_ways_and_a_group_is_left_to_the_group() -> None:
    """The pair stands in both options; members of one pick-one group are not listed again."""
    options = {option.id: option for option in frame(BASE, FITTED, (("shelf", "sort"),)).problem.options}
    assert (options["shelf"].excludes, options["sort"].excludes) == (("sort",), ("shelf",))
    assert options["paint"].excludes == ()
    assert options["paint"].group == "wall"


def test_who_refuses_a_tool_or_a_hazard_does_not_do_it() -> None:
    """Words are matched without regard to capitals."""
    shelf = next(one for one in FITTED if one.id == "shelf")
    assert barred(Person(name="ben", refuses=("Saw",)), shelf)
    assert not barred(Person(name="ben", refuses=("ladder",)), shelf)


def test_goods_that_come_later_wait_for_their_session() -> None:
    """Sessions on days 0, 1 and 5: three days of delivery mean the third, ten mean never."""
    days = tuple(Hours(minutes=(60,), day=day, length_minutes=60) for day in (0, 1, 5))
    brief = Brief(hours=days)
    assert [first_session(lead, brief) for lead in (0, 1, 3, 10)] == [0, 1, 2, 3]


def test_only_what_uses_a_shops_goods_needs_its_errand() -> None:
    """Sorting needs no shop."""
    by_id = {one.id: one for one in FITTED}
    assert errands_of(by_id["sort"], BASE.catalog, BASE.brief.errands) == ()
    assert errands_of(by_id["paint"], BASE.catalog, BASE.brief.errands) == (ERRAND + "mill",)
