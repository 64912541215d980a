"""The checker finds nothing in a good plan, and something in each way of spoiling it."""

from __future__ import annotations

import ast
import copy
import json
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any
from unittest.mock import patch

import pytest

from tests.benchmarks.as_jobs import house
from tests.benchmarks.house_jobs import FOLDER, names
from tests.proof.checker import broken
from tests.proof.comparing import tool_plan
from tests.proof.job_files import Job, read_job

Plan = dict[str, Any]
CATALOG = {
    "currency": "USD",
    "tools": [{"tool": "drill", "buy": 59, "hire_per_session": 14}, {"tool": "ladder", "own": True}],
    "shops": [{"shop": "mill", "delivery": 5.9, "free_over": 60, "tax": "8.25%"}],
    "products": [{"product": "paint", "shop": "mill", "price": 22, "pack": 2.5, "on_hand": 0.5, "lead_days": 1}],
    "remedies": [
        {"remedy": "coat", "answers": {"wall": 0.8}, "uses": {"paint": 3.2}, "pick_one": "g", "needs": ["fill"],
         "steps": [{"hours": 1}, {"hours": 0.5, "wait_hours": 4}], "tools": ["ladder"]},
        {"remedy": "fill", "answers": {"wall": 0.25, "dust": -0.2}, "hours": 0.5, "cost": 7.5},
        {"remedy": "rod", "answers": {"window": 1}, "hours": 1, "people": 2, "tools": ["drill"],
         "spends": {"holes": 2}, "cost": 20},
        {"remedy": "sweep", "answers": {"dust": 0.5}, "hours": {"low": 0.25, "likely": 0.5, "high": 0.75}},
        {"remedy": "wash", "answers": {"wall": 0.1}, "pick_one": "g", "hours": 0.25},
        {"remedy": "mat", "answers": {"dust": -0.5}, "cost": 3},
    ],
}  # fmt: skip
BRIEF = {
    "budget": 160, "contingency": "10%", "ordered": "2026-06-01", "setup_minutes": 10, "limits": {"holes": 4},
    "people": {"ann": {}, "ben": {"not": ["ladder"]}}, "labour": 6, "fixed": [{"name": "Van", "cost": 12}],
    "errands": [{"errand": "mill", "shops": ["mill"], "hours": 0.5}],
    "hours": [{"date": f"2026-06-0{day}", "people": {"ann": 2.5, "ben": 1.75}} for day in (1, 2, 4)],
}  # fmt: skip


@cache
def good() -> tuple[Job, Plan]:
    """A job with something of everything, and the plan of the tool."""
    with TemporaryDirectory() as there:
        folder = Path(there)
        (folder / "faults.csv").write_text("fault,points,safety\nwall,300,\nwindow,200,yes\ndust,105,\n")
        (folder / "catalog.yaml").write_text(json.dumps(CATALOG))
        (folder / "brief.yaml").write_text(json.dumps(BRIEF))
        plan = tool_plan(folder)
        assert plan is not None
        return read_job(folder), plan


def one(plan: Plan, id: str) -> Plan:
    """A chosen remedy."""
    return next(each for each in plan["chosen"] if each["id"] == id)


def line(plan: Plan, kind: str) -> Plan:
    """The first line of money of a kind."""
    return next(each for each in plan["purchases"] if each["kind"] == kind)


def test_a_good_plan_is_clean_and_full() -> None:
    """The plan of the sample job holds steps, goods, a tool, pay, fees: so there is something to spoil."""
    job, plan = good()
    assert broken(job, plan) == []
    assert {each["id"] for each in plan["chosen"]} == {"coat", "fill", "rod", "sweep"}
    assert {"product", "hire", "remedy", "labour", "fixed", "delivery", "tax"} == {
        each["kind"] for each in plan["purchases"]
    }


def cheaper(plan: Plan, of: str, **changed: object) -> None:
    """One line changed, sums kept in step."""
    row = line(plan, of)
    was = row["line_minor"]
    row.update(changed)
    plan["spent_minor"] += row["line_minor"] - was
    plan["plans"]["best"]["spent_minor"] = plan["spent_minor"]


def gone(plan: Plan, id: str) -> None:
    """A chosen remedy taken out of the list."""
    plan["chosen"].remove(one(plan, id))
    plan["plans"]["best"]["chosen"].remove(id)


def put(id: str, step: int, session: int | None) -> Callable[[Plan], None]:
    """A step moved to a session."""
    return lambda plan: one(plan, id)["steps"][step].update(session=session)


SPOILED: dict[str, tuple[Callable[[Plan], object], str]] = {
    "one pack less": (lambda p: cheaper(p, "product", packs=1, line_minor=2200), "a line too much"),
    "one pack more": (lambda p: cheaper(p, "product", packs=3, line_minor=6600), "a line too much"),
    "no delivery": (lambda p: cheaper(p, "delivery", line_minor=0), "a line too much"),
    "tax rounded down": (lambda p: cheaper(p, "tax", line_minor=362), "a line too much"),
    "the dearer way to a tool": (
        lambda p: cheaper(p, "hire", kind="tool", unit_price_minor=5900, line_minor=5900),
        "a line too much",
    ),
    "a day of hire too much": (lambda p: cheaper(p, "hire", packs=2, line_minor=2800), "a line too much"),
    "a cost left out": (lambda p: p["purchases"].remove(line(p, "remedy")), "a line is missing"),
    "pay left out": (lambda p: p["purchases"].remove(line(p, "labour")), "a line is missing"),
    "a fixed cost left out": (lambda p: p["purchases"].remove(line(p, "fixed")), "a line is missing"),
    "a wrong sum": (lambda p: p.update(spent_minor=p["spent_minor"] - 1), "purchases add up"),
    "another budget": (lambda p: p.update(budget_minor=99), "the brief says"),
    "a wrong cost of one": (lambda p: one(p, "fill").update(cost_minor=1), "costs 1"),
    "what is needed is gone": (lambda p: gone(p, "fill"), "coat needs fill"),
    "two of a group": (
        lambda p: p["chosen"].append({"id": "wash", "cost_minor": 0, "answers": ["wall"], "steps": []}),
        "2 of the group g",
    ),
    "one twice": (lambda p: p["chosen"].append(one(p, "rod")), "chosen twice"),
    "one unheard of": (lambda p: one(p, "rod").update(id="moon"), "not in the catalogue"),
    "a step left out": (lambda p: one(p, "coat")["steps"].pop(), "coat has steps"),
    "a shorter step": (lambda p: one(p, "rod")["steps"][0].update(minutes=59), "rod has steps"),
    "fewer hands": (lambda p: one(p, "rod")["steps"][0].update(people=1), "rod has steps"),
    "no session": (put("rod", 0, None), "stands in session None"),
    "a session that is not there": (put("rod", 0, 4), "of 3 that may be used"),
    "before the goods are there": (put("coat", 0, 1), "before its goods"),
    "before what is needed": (put("fill", 0, 3), "comes too early after fill"),
    "paint still wet": (
        lambda p: one(p, "coat")["steps"][1].update(session=one(p, "coat")["steps"][0]["session"]),
        "comes too early after coat",
    ),
    "minutes hidden": (lambda p: p["minutes_used"].__setitem__(0, 1), "minutes used for"),
    "minutes told too high": (lambda p: p["minutes_used"].__setitem__(0, p["minutes_used"][0] + 1), "no crews"),
    "more than there is": (lambda p: p["minutes_used"].__setitem__(2, 999), "999 minutes used of 255"),
    "minutes there": (lambda p: p["minutes_available"].__setitem__(0, 300), "minutes available"),
    "sessions used": (lambda p: p.update(sessions_used=1), "sessions used"),
    "points before": (lambda p: p.update(points_before=406), "points_before 406"),
    "points after": (lambda p: p.update(points_after=0), "points_after 0"),
    "hazards before": (lambda p: p.update(hazards_before=0), "hazards_before 0"),
    "hazards after": (lambda p: p.update(hazards_after=1), "hazards_after 1"),
    "improvement": (lambda p: p.update(improvement=1), "improvement 1, but"),
    "a bound too low": (lambda p: p.update(bound=p["improvement"] - 1, proven=False), "bound"),
    "proven with a higher bound": (lambda p: p.update(bound=p["improvement"] + 1), "bound"),
    "a fault forgotten": (lambda p: p["left"].pop(), "left"),
    "points of a fault": (lambda p: p["left"][0].update(points=1), "left"),
    "something new": (lambda p: p["new"].append({"fault": "x", "points": 1}), "new"),
    "answers": (lambda p: one(p, "rod").update(answers=["wall"]), "rod answers"),
    "candidates": (lambda p: p.update(candidates=9), "9 candidates"),
    "plans.best": (lambda p: p["plans"]["best"].update(improvement=1), "plans.best"),
    "recommended too weak": (lambda p: p["plans"]["recommended"].update(p["plans"]["free"]), "plans.recommended"),
    "free that costs": (lambda p: p["plans"]["free"].update(spent_minor=1300), "plans.free spends"),
    "free with other points": (lambda p: p["plans"]["free"].update(improvement=1), "plans.free: improvement 1"),
}


@pytest.mark.parametrize("name", SPOILED)
def test_a_spoiled_plan_is_caught(name: str) -> None:
    """Each broken promise is told in words that name it."""
    job, plan = good()
    spoiled = copy.deepcopy(plan)
    SPOILED[name][0](spoiled)
    words = broken(job, spoiled)
    assert any(SPOILED[name][1] in each for each in words), words


STRICTER: dict[str, tuple[dict[str, Any], str]] = {
    "must": ({"must": ("mat",)}, "mat must be chosen"),
    "must, a group": ({"must": ("h",)}, "h must be chosen"),
    "must: all": ({"must": ("all",)}, "mat must be chosen"),
    "never": ({"never": ("rod",)}, "rod is ruled out"),
    "never, a group": ({"never": ("g",)}, "coat is ruled out"),
    "never, a product": ({"never": ("paint",)}, "coat is ruled out"),
    "a limit": ({"limits": {"holes": Fraction(1)}}, "2 of holes, 1 at most"),
    "a budget": ({"budget": 9000}, "spent"),
    "money held back": ({"held": 9000}, "held back"),
    "the last day": ({"last": 1}, "that may be used"),
    "someone who does not drill": ({"people": {"ann": ("drill",), "ben": ("drill", "ladder")}}, "too few people"),
    "setting up": ({"setup": 30}, "minutes used for"),
}


@pytest.mark.parametrize("name", STRICTER)
def test_a_stricter_brief_is_broken(name: str) -> None:
    """The same plan breaks a wish that the household did not have."""
    job, plan = good()
    words = broken(replace(job, **STRICTER[name][0]), plan)
    assert any(STRICTER[name][1] in each for each in words), words


def test_excludes_hold_both_ways() -> None:
    """What another excludes is not chosen beside it, whoever of the two says so."""
    job, plan = good()
    for who, other in (("rod", "fill"), ("fill", "rod")):
        rude = {**job.remedies, who: replace(job.remedies[who], excludes=(other,))}
        assert f"{who} excludes {other}" in broken(replace(job, remedies=rude), plan)


def test_quiet_sessions_hear_no_drill() -> None:
    """Drilling in a quiet session is told."""
    job, plan = good()
    hushed = tuple(replace(each, quiet=True) for each in job.sessions or ())
    assert any("is loud in quiet session" in words for words in broken(replace(job, sessions=hushed), plan))


def test_one_person_cannot_be_hurried() -> None:
    """Hours count person by person: ben's minutes are of no use to ann."""
    job, plan = good()
    moved = tuple(replace(each, minutes={"ann": 0, "ben": 255}) for each in job.sessions or ())
    assert any("no crews" in words for words in broken(replace(job, sessions=moved), plan))


@pytest.mark.parametrize("name", names(1, 4))
def test_houses_keep_their_promises(tmp_path: Path, name: str) -> None:
    """The plans of the houses of one and four rooms, held to the files."""
    house((FOLDER / f"{name}.json").read_text(encoding="utf-8"), tmp_path)
    with patch("budgetfix.pipeline.around.BESIDE", 0.02), patch("budgetfix.pipeline.around.GOODS", 0.02):
        plan = tool_plan(tmp_path)
    assert plan is not None
    assert broken(read_job(tmp_path), plan) == []


def test_the_checker_shares_no_code_with_the_program() -> None:
    """Neither the checker nor what it stands on imports the program."""
    here = Path(__file__).parent
    for name in ("checker", "promises", "job_files", "every_plan"):
        tree = ast.parse((here / f"{name}.py").read_text(encoding="utf-8"))
        asked = {node.module or "" for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)}
        asked |= {each.name for node in ast.walk(tree) if isinstance(node, ast.Import) for each in node.names}
        assert not any(module.startswith("budgetfix") for module in asked)
