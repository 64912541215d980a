"""What is said where nothing fits, for jobs as households write them."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

from budgetfix.brief.models import Brief
from budgetfix.cli.no_plan import no_plan
from budgetfix.optimize.problem import NoPlan
from budgetfix.pipeline.reading import JobOptions, read
from tests.pipeline.listed_job import TODAY, Remedy, chosen_plan, write_job
from tests.scenarios import job


def said(folder: Path, remedies: list[Remedy], **brief: object) -> str:
    """The lines for a job that has no plan."""
    write_job(folder, [10] * 4, remedies, brief)
    found = chosen_plan(folder)
    assert isinstance(found, NoPlan)
    lines = no_plan(found, read(folder, JobOptions(), TODAY))
    assert max(len(line) for line in lines) <= 79
    return "\n".join(lines)


def test_two_musts_and_the_money(tmp_path: Path) -> None:
    """Each fits alone; the third must has nothing to do with it and is not named. What is held back is told."""
    remedies: list[Remedy] = [
        {"remedy": "rod", "name": "Wider rod", "answers": {"f1": 1}, "cost": 60},
        {"remedy": "rug", "name": "New rug", "answers": {"f2": 1}, "cost": 70},
        {"remedy": "lamp", "answers": {"f3": 1}},
    ]
    text = said(tmp_path, remedies, budget=110, contingency=10, must=["rod", "rug", "lamp"])
    assert text == (
        "No plan keeps these together:\n"
        "  must: Wider rod (rod)\n"
        "  must: New rug (rug)\n"
        "  the budget of 110.00 USD, 10.00 of it held back\n"
        "Any one of these, given up, would let a plan exist:\n"
        "  must: Wider rod (rod)\n"
        "  must: New rug (rug)\n"
        "  the budget of 110.00 USD, 10.00 of it held back\n"
        "A budget of 140.00 USD (30.00 more) would keep all the rest."
    )


def test_a_group_a_limit_and_the_hours(tmp_path: Path) -> None:
    """A group by its name with its members, a limit by its own."""
    remedies: list[Remedy] = [
        {"remedy": "a", "answers": {"f1": 1}, "pick_one": "rods", "spends": {"holes": 4}},
        {"remedy": "b", "answers": {"f1": 0.5}, "pick_one": "rods", "spends": {"holes": 3}},
    ]
    text = said(tmp_path, remedies, limits={"holes": 2}, must=["rods"], hours=[3])
    assert "  must: rods (one of a, b)\n  the limit on holes\n" in text
    assert "a could never be done: it goes over a limit by itself." in text
    assert "hours" not in text


def test_two_clashes_at_once(tmp_path: Path) -> None:
    """Where giving up one wish is not enough, that is said."""
    remedies: list[Remedy] = [
        {"remedy": "a", "answers": {"f1": 1}, "cost": 60},
        {"remedy": "b", "answers": {"f2": 1}, "hours": 3},
    ]
    text = said(tmp_path, remedies, budget=10, hours=[2], must=["a", "b"])
    assert text.endswith("Giving up one of them is not enough: other wishes clash as well.")


def test_finish_by_and_everything(tmp_path: Path) -> None:
    """To do everything by a date that comes too soon."""
    remedies: list[Remedy] = [{"remedy": name, "answers": {f"f{n}": 1}, "hours": 2} for n, name in enumerate("abc", 1)]
    text = said(tmp_path, remedies, hours=[2, 2, 2], finish_by=2, must="all")
    assert "  must: all\n" in text
    assert "  finish_by\n" in text


def test_a_share_that_is_held_back_grows_with_the_budget(tmp_path: Path) -> None:
    """A tenth held back: what costs 100.00 needs 111.11, of which 11.11 stays back."""
    text = said(
        tmp_path, [{"remedy": "a", "answers": {"f1": 1}, "cost": 100}], budget=50, contingency="10%", must=["a"]
    )
    assert "A budget of 111.11 USD (61.11 more) would keep all the rest." in text
    for spend in (0, 1, 4321, 10000):
        budget = Brief(contingency_share=Fraction(1, 10), contingency_minor=50).budget_for(spend)
        brief = Brief(budget_minor=budget, contingency_share=Fraction(1, 10), contingency_minor=50)
        assert budget - brief.held_back_minor() >= spend
        assert budget - 1 - brief.held_back_of(budget - 1) < spend
    assert Brief(contingency_minor=500).budget_for(10000) == 10500
    assert Brief(contingency_share=Fraction(1)).budget_for(10000) == 10000


def test_long_names_are_broken_into_lines(tmp_path: Path) -> None:
    """A remedy whose name fills the line, with its reason: no line is wider than the screen."""
    name = "The very wide rug along the sofa, with a pad cut to size and a tape to hold it"
    text = said(tmp_path, [{"remedy": "rug", "name": name, "answers": {"f1": 1}, "cost": 100}], budget=50, must=["rug"])
    assert " ".join(text.split()).count(f"{name} (rug)") == 3


def test_the_clock_leaves_it_open() -> None:
    """No clash is claimed that was not worked out, nor that there is no plan."""
    mine = job("renter")
    assert "--seconds" in " ".join(no_plan(NoPlan(), mine))
    assert no_plan(NoPlan(proven=False), mine)[0].startswith("No plan was found in the time, nor")
    assert max(len(line) for line in no_plan(NoPlan(proven=False), mine)) <= 79
    lines = no_plan(NoPlan((), ("budget", "sessions"), open=True), mine)
    assert lines[-1] == "Which of them to give up was not worked out in the time."
