"""A few broken jobs; that the trial sees what it looks for; and anything that a person could type, by hypothesis."""

from __future__ import annotations

import random
import tempfile
from collections.abc import Callable
from dataclasses import replace
from functools import lru_cache
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from budgetfix.base.problems import FileProblem
from budgetfix.forms import column
from budgetfix.intake import csv_rows, plan_back
from budgetfix.intake.job import Job as ReadJob
from budgetfix.intake.job import read_job
from budgetfix.pipeline import reading
from tests.trials.broken import TRIAL, by_name, one
from tests.trials.broken_jobs import Job, jobs
from tests.trials.broken_run import Seen, seen
from tests.trials.broken_sheets import book_bytes, copied
from tests.trials.broken_sites import sites, spoilt
from tests.trials.page import promises
from tests.trials.registry import SEED
from tests.trials.trial import Asked

PAGE = Path(__file__).parents[2] / "reports" / "what-we-promise.md"
RELAXED = settings(max_examples=6, deadline=None, suppress_health_check=list(HealthCheck))
MOST = 40
"""Tries at most until a planted defect must be seen."""


def test_a_few_broken_jobs(tmp_path: Path) -> None:
    """No traceback, no silent reading, nothing written; the page promises what is tried, word for word."""
    found = TRIAL.run(Asked(SEED, TRIAL.small, tmp_path))
    assert found.broken == ()
    assert all(row.tried for row in found.rows)
    assert promises(PAGE.read_text("utf-8"), TRIAL.slug) == tuple(row.promise for row in found.rows)


def test_a_try_can_be_repeated_alone(tmp_path: Path) -> None:
    """The same seed and number give the same refusal, word for word, whatever was tried before."""
    first, again = (one(SEED, 12, "planted", tmp_path / "try").err for _ in range(2))
    assert first == again
    assert first


def seen_within(folder: Path, sort: str, promise: str) -> bool:
    """True where one of the first tries of a sort finds this promise broken."""
    return any(promise in one(SEED, number, sort, folder / f"try-{number}").faults for number in range(MOST))


@pytest.fixture(autouse=True)
def _jobs() -> None:
    """The jobs that are spoilt are read before anything is planted, whichever test comes first."""
    by_name()


def test_a_crash_is_seen(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Planted: reading a length divides by nothing."""

    def crash(*_: object, **__: object) -> float:
        return 1 / 0

    monkeypatch.setattr(column, "read_length", crash)
    assert seen_within(tmp_path, "planted", "words")


def test_a_silent_reading_is_seen(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Planted: what cannot be read is left out without a word."""
    monkeypatch.setattr(reading, "read_job", _job_with(lambda _: ()))
    assert seen_within(tmp_path, "planted", "sure")


def test_one_problem_of_many_is_seen(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Planted: only the first problem is told."""
    monkeypatch.setattr(reading, "read_job", _job_with(lambda problems: problems[:1]))
    assert seen_within(tmp_path, "planted", "all")


def test_a_wrong_cell_is_seen(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Planted: every problem names the line below its own."""

    def below(problem: FileProblem) -> FileProblem:
        line = problem.place.label.removeprefix("line ")
        label = f"line {int(line) + 1}" if line.isdigit() else f"{problem.place.label}1"
        return replace(problem, place=replace(problem.place, label=label))

    monkeypatch.setattr(reading, "read_job", _job_with(lambda problems: tuple(map(below, problems))))
    assert seen_within(tmp_path, "planted", "all")


def test_a_line_without_words_is_seen(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Planted: problems do not say what was wanted."""
    monkeypatch.setattr(FileProblem, "__str__", lambda problem: f"{problem.place} is wrong")
    assert seen_within(tmp_path, "planted", "lines")


def test_a_file_that_is_written_is_seen(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Planted: a refusal leaves a note in the folder."""

    def mark(folder: Path, _: ReadJob) -> tuple[str, ...]:
        (folder / "note.txt").write_text("refused", "utf-8")
        return ()

    monkeypatch.setattr(reading, "_mark", mark)
    assert seen_within(tmp_path, "planted", "folder")


def test_another_reading_is_seen(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Planted: only commas are known between fields."""
    monkeypatch.setattr(csv_rows, "SIGNS", (",",))
    assert seen_within(tmp_path, "harmless", "same")


def test_a_wrong_tick_that_is_read_is_seen(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Planted: whatever stands in a cell for minutes is no minutes."""
    monkeypatch.setattr(plan_back, "read_minutes", lambda _: 0)
    assert seen_within(tmp_path, "ticked", "all")


def _job_with(how: Callable[[tuple[FileProblem, ...]], tuple[FileProblem, ...]]) -> Callable[..., ReadJob]:
    """`read_job` with other problems."""

    def read(*given: object) -> ReadJob:
        job = read_job(*given)  # type: ignore[arg-type]
        return replace(job, problems=how(job.problems))

    return read


@lru_cache(maxsize=1)
def small_jobs() -> dict[str, Job]:
    """The quick ones by name."""
    return {job.name: job for job in jobs() if job.name in ("listed", "briefed", "room-text", "room-book")}


def told(name: str, files: dict[str, bytes]) -> Seen:
    """`inspect` on a job with these files instead of its own."""
    with tempfile.TemporaryDirectory() as folder:
        found = seen("inspect", {**small_jobs()[name].parts(), **files}, Path(folder) / "job")
    assert found.faults == {}
    return found


@RELAXED
@given(
    st.sampled_from(("brief.yaml", "catalog.csv", "faults.csv")), st.binary(max_size=200) | st.text().map(str.encode)
)
def test_any_bytes_as_any_file(file: str, data: bytes) -> None:
    """Whatever bytes stand in a file, it is read or refused in words."""
    told("listed", {file: data})


@RELAXED
@given(
    st.data(), st.recursive(st.none() | st.booleans() | st.integers() | st.floats() | st.text(), st.lists, max_leaves=4)
)
def test_any_value_at_any_key(data: st.DataObject, value: object) -> None:
    """Whatever value stands at any key of a brief, it is read or refused in words."""
    job = small_jobs()["briefed"]
    site = data.draw(st.sampled_from([site for site in sites(job) if site.file == "brief.yaml"]))
    told("briefed", spoilt(job, [(site, value)]))


@RELAXED
@given(
    st.integers(0, 2**32), st.one_of(st.text(), st.integers(), st.floats(allow_nan=False), st.booleans(), st.dates())
)
def test_any_value_in_any_cell(seed: int, value: object) -> None:
    """Whatever stands in any cell of a workbook, headings too, it is read or refused in words."""
    chance = random.Random(seed)
    pages = copied(small_jobs()["room-book"].pages("survey.xlsx"))
    page = chance.choice(pages)
    page.cells[chance.choice(sorted(page.cells))] = value
    told("room-book", {"survey.xlsx": book_bytes(pages)})
