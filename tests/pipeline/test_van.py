"""A day with a van: what waits for it, what it may carry, who unloads, and what is said of it."""

from __future__ import annotations

from pathlib import Path

import pytest

from budgetfix.base.problems import FilesRefused
from budgetfix.framing.van import weights
from budgetfix.outcome.book import PlanBook
from budgetfix.pipeline.reading import JobOptions, read
from budgetfix.pipeline.van_notes import van_notes
from tests.pipeline.listed_job import TODAY, Remedy, ids, proven_plan, write_job

OUT = {"date": "2026-06-04", "from": "09:00", "to": "11:00", "load_kg": 30, "cost": 20, "task": "load"}
BACK = {"date": "2026-07-04", "from": "09:00", "to": "11:00", "load_kg": 30}
HOURS = [{"date": "2026-06-03", "start": "09:00", "hours": 3}, {"date": "2026-06-04", "start": "09:00", "hours": 5}]
REMEDIES: list[Remedy] = [
    {"remedy": "load", "answers": {}, "hours": 1},
    {"remedy": "paint", "answers": {"f3": 1}, "hours": 1},
    {"remedy": "rug", "answers": {"f1": 1}, "uses": {"rug": 1}, "hours": 1},
    {
        "remedy": "mirror",
        "answers": {"f2": 1},
        "uses": {"mirror": 1},
        "steps": [{"hours": 0.5, "from_stock": "no"}, {"hours": 0.5}],
    },
]


def plan(folder: Path, kilograms: tuple[float | None, float | None], **brief: object) -> PlanBook:
    """A proven plan for two pieces from stock that weigh so much."""
    pieces = [
        {"product": id, "name": id.title(), "price": 10, "stock": 1, **({} if kg is None else {"weight_kg": kg})}
        for id, kg in zip(("rug", "mirror"), kilograms, strict=True)
    ]
    wishes = {"hours": HOURS, "vans": {"out": OUT, "back": BACK}, "must": ["load"], **brief}
    write_job(folder, [20, 10, 5], REMEDIES, wishes, {"products": pieces})
    return proven_plan(folder)


def test_nothing_from_stock_before_the_van(tmp_path: Path) -> None:
    """The rug waits for eleven o'clock on Thursday; a first step that takes nothing from stock does not."""
    book = plan(tmp_path, (14, 11))
    when = {(task.candidate, task.step): task.session for task in book.tasks}
    assert (when["rug", 1], when["mirror", 1], when["mirror", 2]) == (3, 1, 3)
    assert when["load", 1] == 2
    assert [(row.start_minute, row.end_minute) for row in book.sessions or ()] == [(540, 720), (540, 660), (660, 840)]


def test_setting_up_is_paid_once(tmp_path: Path) -> None:
    """A quarter of an hour on Thursday morning serves both parts of the day."""
    book = plan(tmp_path, (14, 11), setup_minutes=15)
    used = [row.minutes_used for row in book.sessions or ()]
    assert used == [15 + 60 + 30, 15 + 60, 60 + 30]


def test_setting_up_is_paid_by_work_after_the_van_only(tmp_path: Path) -> None:
    """Who places the rug at eleven has set up at nine: the first part of the day says so."""
    only = plan(tmp_path, (14, 11), setup_minutes=15, hours=HOURS[1:], never=["paint", "load", "mirror"], must=[])
    assert [row.minutes_used for row in only.sessions or ()] == [15, 60]
    assert [row.who[0][2] for row in only.sessions or ()] == [15, 60]


@pytest.mark.parametrize(("mirror_kg", "chosen"), [(16, True), (16.5, False)])
def test_the_van_carries_so_much(tmp_path: Path, mirror_kg: float, chosen: bool) -> None:
    """14 and 16 kg fill a van of 30 kg; half a kilogram more, and the better of the two goes alone."""
    book = plan(tmp_path, (14, mirror_kg))
    assert ids(book) == ["load", *(["mirror"] if chosen else []), "paint", "rug"]


def test_what_is_too_heavy_for_the_van_says_so(tmp_path: Path) -> None:
    """A piece that fills more than the van by itself is left out with the reason."""
    why = {row.id: row.why for row in plan(tmp_path, (31, 11)).left_out}
    assert why == {"rug": "it is heavier than the van may carry"}


def test_the_slot_is_paid_and_told(tmp_path: Path) -> None:
    """One fixed line, a sentence for each slot, one for what has no weight, one for the photographs."""
    book = plan(tmp_path, (14, None), photographs={"date": "2026-06-05", "at": "10:00"})
    assert [line.line_minor for line in book.money if line.kind == "fixed"] == [2000]
    assert book.notes == (
        "Van out: Thursday 4 June, 09:00 to 11:00, 14 kg of 30 kg; nothing from stock is placed before 11:00. "
        "The van's window makes two sessions of Thursday: 2 and 3.",
        "Van back: Saturday 4 July, 09:00 to 11:00, 14 kg of 30 kg.",
        "The load leaves out what has no weight in the catalogue: Mirror.",
        "Photographs: Friday 5 June at 10:00. All work ends before.",
    )
    assert weights(read(tmp_path, JobOptions(), TODAY).catalog) == {"rug": 14}
    assert van_notes.__doc__


def test_without_hours_no_times_are_promised(tmp_path: Path) -> None:
    """Where nobody planned sessions, the notes give the window, the load and the hour, and no order of work."""
    book = plan(tmp_path, (14, 11), hours=None, photographs={"date": "2026-06-05", "at": "10:00"})
    assert book.notes[0] == "Van out: Thursday 4 June, 09:00 to 11:00, 25 kg of 30 kg."
    assert book.notes[-1] == "Photographs: Friday 5 June at 10:00."


@pytest.mark.parametrize(("hour", "offered"), [("10:00", False), ("11:00", False), ("12:30", True)])
def test_no_hour_more_into_the_photographs(tmp_path: Path, hour: str, offered: bool) -> None:
    """Work from nine to ten: an hour more is worked out only where the photographs are later than eleven."""
    sessions = [{"date": "2026-06-04", "start": "09:00", "hours": 1}]
    write_job(
        tmp_path,
        [20, 10],
        [{"remedy": f"i{one}", "answers": {f"f{one}": 1}, "hours": 1} for one in (1, 2)],
        {"hours": sessions, "photographs": {"date": "2026-06-04", "at": hour}},
    )
    step = proven_plan(tmp_path).next
    assert (step.hour is not None) == offered
    assert step.hour is None or step.hour.improvement == 30


def test_no_window_for_the_loading(tmp_path: Path) -> None:
    """Where nobody works while the van is there, the loading cannot be done, and nothing else changes."""
    out = {**OUT, "date": "2026-06-06"}
    why = {row.id: row.why for row in plan(tmp_path, (14, 11), vans={"out": out}, must=[]).left_out}
    assert why["load"] == "it would be done too late"
    assert why["rug"] == "it would be done too late"


def test_loading_is_kept_within_the_window(tmp_path: Path) -> None:
    """The van stands at the door from ten to eleven of a day from nine: the loading is in that hour, or not at all."""
    out = {**OUT, "from": "10:00"}
    book = plan(tmp_path, (14, 11), vans={"out": out})
    rows = [(row.start_minute, row.end_minute) for row in book.sessions or ()]
    assert rows == [(540, 720), (540, 600), (600, 660), (660, 840)]
    assert {task.session for task in book.tasks if task.candidate == "load"} == {3}
    assert book.notes[0].endswith(" The van's window makes three sessions of Thursday: 2, 3 and 4.")


def test_loading_longer_than_the_window_is_left_out(tmp_path: Path) -> None:
    """One hour of loading does not fit into three quarters, however long the day is."""
    book = plan(tmp_path, (14, 11), vans={"out": {**OUT, "from": "10:15"}}, must=[])
    assert "load" not in ids(book)
    assert "load" in {row.id for row in book.left_out}


def test_the_loading_must_be_known(tmp_path: Path) -> None:
    """A task that no remedy is called by is a problem of the brief, with the nearest name."""
    out = {**OUT, "task": "laod"}
    write_job(tmp_path, [20, 10, 5], REMEDIES[:2], {"hours": HOURS, "vans": {"out": out}})
    with pytest.raises(FilesRefused) as refused:
        read(tmp_path, JobOptions(), TODAY)
    assert [str(problem) for problem in refused.value.problems if "laod" in str(problem)] == [
        "brief.yaml [line 1] found 'laod', wanted the name of a remedy; did you mean load?"
    ]
