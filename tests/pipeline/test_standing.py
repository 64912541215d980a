"""Where pieces stand, in days, rows and words."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from fractions import Fraction
from pathlib import Path

from budgetfix.brief.stay import Stay
from budgetfix.brief.van import Slot, Vans
from budgetfix.intake.job import Job
from budgetfix.optimize.stock import Stock
from budgetfix.outcome.portfolio import Standing
from budgetfix.pipeline.standing import Holding, elsewhere, pieces, runs, stay_of, undated, without_it
from tests.pipeline.street import read_street, write_street

FOURTH = date(2026, 6, 4)


def street(folder: Path) -> tuple[Job, ...]:
    """Elm Street, Oak Lane, Pine."""
    write_street(folder)
    return read_street(folder)


def with_brief(job: Job, **more: object) -> Job:
    """The same job with another wish."""
    return replace(job, brief=type(job.brief)(**{**dict(job.brief), **more}))


def test_days_with_turnaround(tmp_path: Path) -> None:
    """The last day moves on by the days between two houses; without a stay there are none."""
    elm = street(tmp_path)[0]
    assert stay_of(elm) == (FOURTH.toordinal(), FOURTH.toordinal() + 30)
    stay = Stay(first=FOURTH, until=date(2026, 6, 6), turnaround_days=2)
    assert stay_of(with_brief(elm, stay=stay)) == (FOURTH.toordinal(), FOURTH.toordinal() + 4)
    assert stay_of(with_brief(elm, stay=None)) is None


def test_words_for_where_it_stands(tmp_path: Path) -> None:
    """Every house that holds it and meets this one; a house without dates holds it all the time."""
    elm, oak, pine = street(tmp_path)
    lamps = (("lamp", 1),)
    all_three = [
        Holding("Elm", elm, lamps),
        Holding("Oak", oak, ()),
        Holding("Pine", with_brief(pine, stay=None), lamps),
    ]
    stock = Stock({"lamp": 3, "rug": 1}, tuple(stay_of(one.job) for one in all_three))
    assert elsewhere(all_three, stock, 1, (("lamp", 1), ("rug", 1))) == {
        "lamp": "stands in Elm until 4 July and in Pine all the time"
    }
    assert elsewhere(all_three, stock, 1, (("rug", 0),)) == {"rug": "is kept for the other houses"}


def test_a_note_only_for_what_is_missed(tmp_path: Path) -> None:
    """A piece that it could have and leaves, since another piece is away, is not missed."""
    oak = street(tmp_path)[1]
    where = {"lamp": "stands in Elm until 4 July", "rug": "stands in Elm until 4 July"}
    mine = Holding("Oak", oak, (("lamp", 1),), (("lamp", 2), ("rug", 1)), (("lamp", 1), ("rug", 0)))
    assert without_it(mine, where) == (
        "Table lamp stands in Elm until 4 July: this plan does without 1 of 2 packs.",
        "Ivory rug stands in Elm until 4 July: this plan does without it.",
    )
    assert without_it(replace(mine, held=(), most=(("lamp", 2), ("rug", 1))), where) == ()


def test_a_job_without_a_stay_says_so(tmp_path: Path) -> None:
    """Only where it holds something."""
    elm = with_brief(street(tmp_path)[0], stay=None)
    assert undated(Holding("Elm", elm, ())) == ()
    assert len(undated(Holding("Elm", elm, (("rug", 1),)))) == 1


def test_rows_of_pieces(tmp_path: Path) -> None:
    """By id, each with its houses in the order of days, and those that miss it."""
    elm, oak, pine = street(tmp_path)
    holdings = [
        Holding("Elm", elm, (("lamp", 2),), (("lamp", 2), ("rug", 1)), (("rug", 0),)),
        Holding("Oak", oak, (("rug", 1),)),
        Holding("Pine", pine, (("lamp", 2),)),
    ]
    lamp, rug = pieces({"catalog": holdings})
    assert (lamp.name, lamp.place, lamp.packs, rug.weight_kg) == ("Table lamp", "bay 1", 3, Fraction(12))
    assert [one.house for one in lamp.stands] == ["Elm", "Pine"]
    assert rug.stands == (Standing("Oak", 1, date(2026, 6, 20), date(2026, 7, 20)),)
    assert (lamp.missed, rug.missed) == ((), ("Elm",))


def test_runs_of_the_van(tmp_path: Path) -> None:
    """Each slot with what it carries and what that weighs, as far as known, by day and hour."""
    elm, oak, _ = street(tmp_path)
    out = Slot(on=FOURTH, start_minute=540, end_minute=660, load_kg=Fraction(400))
    back = Slot(on=date(2026, 7, 4), start_minute=540, end_minute=600)
    holdings = [
        Holding("Oak", with_brief(oak, vans=Vans(out=replaced(out, 660, 720))), ()),
        Holding("Elm", with_brief(elm, vans=Vans(out=out, back=back)), (("lamp", 2), ("rug", 1))),
    ]
    found = runs(holdings)
    assert [(run.house, run.way, run.start_minute) for run in found] == [
        ("Elm", "brings", 540),
        ("Oak", "brings", 660),
        ("Elm", "takes back", 540),
    ]
    assert found[0].carried == (("Ivory rug", 1, "bay 3"), ("Table lamp", 2, "bay 1"))
    assert (found[0].weight_kg, found[0].unweighed, found[0].load_kg) == (Fraction(12), 2, Fraction(400))


def replaced(slot: Slot, start: int, end: int) -> Slot:
    """The same slot at another time."""
    return Slot(**{**dict(slot), "start_minute": start, "end_minute": end})
