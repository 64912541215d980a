"""Which folders are jobs, which are folders of jobs, and which are neither."""

from __future__ import annotations

from pathlib import Path

import pytest

from budgetfix.intake.houses import Houses, houses, is_job


@pytest.mark.parametrize("name", ["survey.xlsx", "survey.yaml", "faults.csv"])
def test_a_survey_or_faults_make_a_job(tmp_path: Path, name: str) -> None:
    """A brief or a catalogue alone do not."""
    (tmp_path / "brief.yaml").touch()
    assert not is_job(tmp_path)
    (tmp_path / name).touch()
    assert is_job(tmp_path)


def test_jobs_and_others_by_name(tmp_path: Path) -> None:
    """In the order of their letters; hidden folders and files are not looked at."""
    for name in ("pine", "elm", "photos", ".old"):
        (tmp_path / name).mkdir()
    for name in ("pine", "elm", ".old"):
        (tmp_path / name / "faults.csv").touch()
    (tmp_path / "catalog.yaml").touch()
    assert houses(tmp_path) == Houses(("elm", "pine"), ("photos",))


def test_neither(tmp_path: Path) -> None:
    """A job, an empty folder, a folder of folders without jobs, no folder at all."""
    assert houses(tmp_path) is None
    (tmp_path / "photos").mkdir()
    assert houses(tmp_path) is None
    assert houses(tmp_path / "nowhere") is None
    (tmp_path / "inside").mkdir()
    (tmp_path / "inside" / "faults.csv").touch()
    assert houses(tmp_path) is not None
    (tmp_path / "faults.csv").touch()
    assert houses(tmp_path) is None
