"""The laws of the whole walk on a few jobs; planted defects that they must catch; and the page that tells of them."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from random import Random
from typing import Any

import pytest

import budgetfix.exports.survey_yaml
import budgetfix.framing.listed
import budgetfix.inspection.inspect
import budgetfix.intake.job
import budgetfix.outcome.check
from budgetfix.brief.models import Brief, ListedFault
from budgetfix.catalog.bill import total_minor
from budgetfix.inspection.finding import Finding
from budgetfix.intake.faults_csv import read_faults
from tests.laws.source import REPO
from tests.trials.laws import TRIAL, One, laws_on
from tests.trials.laws_listed import LISTED, listed_job
from tests.trials.laws_measured import MEASURED
from tests.trials.laws_rooms import room_job
from tests.trials.laws_walk import BROKEN, HELD, Files, Law, Tried
from tests.trials.page import promises
from tests.trials.registry import SEED
from tests.trials.trial import Asked

LISTED_JOB, ROOM_JOB = 6, 3
"""A job of listed faults and a room that have a plan and something to change for every law below."""
PAGE = REPO / "reports" / "what-we-promise.md"


def law(laws: tuple[Law, ...], slug: str) -> Law:
    """The law of that name."""
    return next(one for one in laws if one.slug == slug)


def listed(folder: Path, slug: str, number: int = LISTED_JOB) -> Tried:
    """One law on one job of listed faults."""
    one = One(SEED, number, folder)
    return laws_on(one, listed_job(Random(one.name)), (law(LISTED, slug),))[-1]


def measured(folder: Path, slug: str) -> tuple[Tried, ...]:
    """The check, the fresh inspection and one law on one room."""
    one = One(SEED, ROOM_JOB, folder)
    return laws_on(one, room_job(Random(one.name)), (law(MEASURED, slug),))


def test_no_law_is_broken_and_the_page_tells_of_all(tmp_path: Path) -> None:
    """The small run: nothing is broken, every promise has been tried somewhere, and the page names just these."""
    result = TRIAL.run(Asked(SEED, TRIAL.small, tmp_path))
    assert result.broken == ()
    assert sum(row.broken for row in result.rows) == 0
    assert sum(row.tried for row in result.rows) > 20
    assert promises(PAGE.read_text("utf-8"), TRIAL.slug) == tuple(row.promise for row in result.rows)


def test_a_job_can_be_tried_alone(tmp_path: Path) -> None:
    """The same number gives the same job, whatever was tried before it."""
    assert listed_job(Random(f"{SEED}/4")) == listed_job(Random(f"{SEED}/4"))
    assert listed_job(Random(f"{SEED}/4")) != listed_job(Random(f"{SEED}/5"))
    assert listed(tmp_path, "money").came == HELD


def test_a_cent_too_much_in_the_bill_is_caught(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Planted: the bill that checks the plan adds a cent."""
    honest = total_minor
    monkeypatch.setattr(budgetfix.outcome.check, "total_minor", lambda bill: honest(bill) + 1)
    assert [one.came for one in laws_on(One(SEED, 1, tmp_path), _with_plan(), ())] == [BROKEN]


def _with_plan() -> Files:
    return listed_job(Random(f"{SEED}/{LISTED_JOB}"))


def test_a_name_that_counts_is_caught(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Planted: a fault whose name begins with k weighs a point more."""
    honest = budgetfix.framing.listed.remaining

    def unfair(fault: ListedFault, *rest: Any) -> int:
        return honest(fault, *rest) + fault.fault.startswith("k")

    for module in ("budgetfix.framing.listed", "budgetfix.outcome.check", "budgetfix.outcome.make"):
        monkeypatch.setattr(f"{module}.remaining", unfair)
    assert listed(tmp_path, "renamed").came == BROKEN


def test_an_order_that_counts_is_caught(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Planted: the last line of faults.csv is lost."""
    honest = read_faults

    def forgetful(path: Path) -> Any:
        found, problems = honest(path)
        return tuple(replace_points(one) if one == found[-1] else one for one in found), problems

    monkeypatch.setattr(budgetfix.intake.job, "read_faults", forgetful)
    assert BROKEN in {listed(tmp_path, "shuffled", number).came for number in (4, 5, 6, 8, 9, 10)}


def replace_points(fault: ListedFault) -> ListedFault:
    """The fault without its points."""
    return ListedFault(fault=fault.fault, points=0, safety=fault.safety)


def test_a_priority_that_is_not_read_is_caught(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Planted: what is of no interest counts all the same."""
    monkeypatch.setattr(Brief, "priority", lambda *_: Fraction(1))
    assert BROKEN in {listed(tmp_path, "priority 0", number).came for number in (4, 5, 6, 8)}


def test_a_budget_read_too_small_is_caught(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Planted: of more than 100.00 all is held back."""
    honest = Brief.held_back_minor
    monkeypatch.setattr(
        Brief, "held_back_minor", lambda brief: (brief.budget_minor or 0) if _large(brief) else honest(brief)
    )
    assert BROKEN in {listed(tmp_path, "dearer", number).came for number in (4, 5, 6, 8, 9, 10)}


def _large(brief: Brief) -> bool:
    return brief.budget_minor is not None and brief.budget_minor > 10_000


def test_a_rule_that_has_a_hand_is_caught(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Planted: what stands within 1100 mm of the left corner of its wall is judged twice as hard."""
    honest: Callable[..., Finding | None] = budgetfix.inspection.inspect.judge_one

    def handed(judge: Any, look: Any, subject: str, brief: Brief) -> Finding | None:
        found = honest(judge, look, subject, brief)
        hard = any(getattr(one, "from_left", 9999) < 1100 for _, one in [look.survey.named.get(subject, ("", None))])
        return replace(found, raw=found.raw * 2) if hard and found is not None else found

    monkeypatch.setattr(budgetfix.inspection.inspect, "judge_one", handed)
    assert measured(tmp_path, "mirror")[-1].came == BROKEN


def test_a_survey_that_forgets_is_caught(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Planted: the room after is written without its pictures."""
    one = One(SEED, ROOM_JOB, tmp_path)
    files = room_job(Random(one.name))
    monkeypatch.setattr("budgetfix.pipeline.writing.survey_yaml", _bare)
    assert [found.came for found in laws_on(one, files, ())] == [HELD, BROKEN]


def _bare(survey: Any, *rest: Any) -> bytes:
    kept = {name: getattr(survey, name) for name in type(survey).model_fields}
    fewer = type(survey).model_validate({**kept, "pictures": (), "lights": (), "rugs": ()})
    return budgetfix.exports.survey_yaml.survey_yaml(fewer, *rest)
