"""What is said where nothing fits, for jobs as households write them."""

from __future__ import annotations

from pathlib import Path

from budgetfix.cli.no_plan import no_plan
from budgetfix.optimize.problem import NoPlan
from budgetfix.pipeline.reading import JobOptions, read
from tests.pipeline.listed_job import TODAY, Remedy, chosen_plan, write_job


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
        "With 30.00 USD more to spend, all the rest can be kept."
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


def test_the_clock_leaves_it_open() -> None:
    """No clash is claimed that was not worked out."""
    from tests.scenarios import job

    assert "--seconds" in no_plan(NoPlan(), job("renter"))[0]
