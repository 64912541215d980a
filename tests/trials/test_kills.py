"""A small run of the trial, and defects planted in the product that it must catch."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Mapping
from pathlib import Path

import pytest

from budgetfix.base.moves import Move
from budgetfix.exports import files, moves
from budgetfix.pipeline import writing
from tests.laws.source import REPO
from tests.trials.kills import TRIAL, Bench, bench, planted
from tests.trials.kills_desk import Case
from tests.trials.kills_disk import disk_parts
from tests.trials.page import promises
from tests.trials.registry import SEED
from tests.trials.trial import Asked

pytestmark = [
    pytest.mark.filterwarnings("ignore:Unknown extension", "ignore:Conditional Formatting extension"),
    pytest.mark.skipif(not hasattr(os, "fork"), reason="processes are forked here"),
]


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Bench:
    """The cases, made once."""
    return bench(tmp_path_factory.mktemp("kills"))


def replan(made: Bench) -> Case:
    """The rest over a ticked workbook."""
    return next(one for one in made.cases if one.ticks is not None)


def test_a_small_run_breaks_nothing(tmp_path: Path) -> None:
    """A few kills and full disks; the page in the documents tells of these promises and no others."""
    found = TRIAL.run(Asked(SEED, TRIAL.small, tmp_path, 2))
    assert found.broken == ()
    page = (REPO / "reports" / "what-we-promise.md").read_text("utf-8")
    assert promises(page, TRIAL.slug) == tuple(row.promise for row in found.rows)


def moved_aside(
    folder: Path, made: Mapping[str, bytes], gone: Iterable[str] = (), check: Callable[[], None] | None = None
) -> None:
    """How it was done before: the earlier file is moved out of the way, then the new one in."""
    assert check is not None
    for name in sorted(made):
        (folder / f".{name}.part").write_bytes(made[name])
    for name in sorted(made):
        if (folder / name).exists():
            os.replace(folder / name, folder / f".{name}.old")
        os.replace(folder / f".{name}.part", folder / name)
    for name in sorted(made):
        (folder / f".{name}.old").unlink(missing_ok=True)
    for name in gone:
        (folder / name).unlink()


def in_place(
    folder: Path, made: Mapping[str, bytes], gone: Iterable[str] = (), check: Callable[[], None] | None = None
) -> None:
    """The simplest way to write."""
    assert check is not None
    for name in sorted(made):
        with (folder / name).open("wb") as file:
            file.write(made[name][:100])
            file.flush()
            os.fsync(file.fileno())
            file.write(made[name][100:])
    for name in gone:
        (folder / name).unlink()


def no_record(folder: Path, these: tuple[Move, ...]) -> None:
    """Whole files moved one by one, and nothing that says so."""
    moves.move_in(folder, these)


@pytest.mark.parametrize(("way", "wrong"), [(moved_aside, "is gone"), (in_place, "neither the earlier nor the new")])
def test_another_way_of_writing_is_caught(
    made: Bench, monkeypatch: pytest.MonkeyPatch, way: Callable[..., None], wrong: str
) -> None:
    """Files moved aside first are missing for a moment, files written in place are half there."""
    monkeypatch.setattr(writing, "write_whole", way)
    assert any(wrong in one for one in planted(replan(made), made, range(12, 40, 1)))


def test_moves_without_a_record_are_caught(made: Bench, monkeypatch: pytest.MonkeyPatch) -> None:
    """Every file is whole, but some are of the one plan, some of the other, and nobody ends what was begun."""
    monkeypatch.setattr(files, "_moved", no_record)
    assert any("neither all earlier nor all new" in one for one in planted(replan(made), made, range(40, 60, 2)))


def test_a_writing_that_does_not_look_again_is_caught(made: Bench, monkeypatch: pytest.MonkeyPatch) -> None:
    """What was saved, or opened, while the files were made ready would go."""
    monkeypatch.setattr(writing, "refuse_open", lambda _: None)
    monkeypatch.setattr(writing, "changed", lambda *_: False)
    monkeypatch.setattr(moves, "stamp", lambda _: None)
    monkeypatch.setattr(files, "stamp", lambda _: None)
    told = [one for part in disk_parts(Asked(SEED, 1, made.folder))[-2:] for one in part(made)]
    broken = [line for one in told for line in one.lines]
    assert any("saved while a run writes" in one for one in broken)
    assert any("another program has open" in one for one in broken)
