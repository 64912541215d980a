from __future__ import annotations

import time
from collections.abc import Sequence
from itertools import product
from pathlib import Path
from unittest.mock import DEFAULT, Mock, patch

import pytest

from budgetfix.intake.job import Job as Read
from budgetfix.optimize.sharing import NoShare, share
from budgetfix.optimize.stock import Packs, Stock
from budgetfix.pipeline.planning import Wish
from budgetfix.pipeline.portfolio import NoPlans, NotTogether, Together, groups, planned_together
from budgetfix.pipeline.seat import Seat
from budgetfix.pipeline.standing import stay_of
from tests.optimize.many_houses import too_many
from tests.pipeline.listed_job import ids, proven_plan
from tests.pipeline.street import (
    JUNE,
    LAMP,
    LATER,
    OVERLAPPING,
    RUG,
    Raw,
    only_plans,
    plan_street,
    read_street,
    write_catalog,
    write_house,
    write_random_street,
    write_street,
)
from tests.proof.every_plan import subsets
from tests.proof.job_files import Job, read_job
from tests.proof.promises import money


def planned(folder: Path, lanes: int = 1) -> Together:
    """A street of which every job has a plan."""
    with only_plans():
        found = plan_street(folder, lanes)
    assert isinstance(found, Together)
    return found


def chosen(found: Together) -> list[list[str]]:
    """What each house does."""
    return [ids(made.book) for made in found.made]


def test_the_rug_goes_where_it_does_most(tmp_path: Path) -> None:
    """Oak Lane loses 30 points without the rug, Elm Street 20 and Pine 5: it stands in Oak Lane, and so on."""
    write_street(tmp_path)
    found = planned(tmp_path)
    assert chosen(found) == [["study"], ["hall", "paint"], ["study"]]
    assert all(shared.proven for _, shared in found.groups)


def test_where_it_stands_is_told(tmp_path: Path) -> None:
    """Each house that goes without a piece says where it stands and until when, in its notes and beside the remedy."""
    write_street(tmp_path)
    elm, oak, _ = (made.book for made in planned(tmp_path).made)
    assert "Ivory rug stands in Oak Lane until 20 July: this plan does without it." in elm.notes
    hall = next(row for row in elm.left_out if row.id == "hall")
    assert (hall.why, hall.would_add) == ("Ivory rug: stands in Oak Lane until 20 July", 20)
    where = "stands in Elm Street until 4 July and in Pine until 4 August"
    assert f"Table lamp {where}: this plan does without it." in oak.notes
    assert [row.why for row in oak.left_out if row.id == "study"] == [
        f"Table lamp: it takes 2, and 1 is there; the rest {where}"
    ]


def test_alone_it_is_planned_as_alone(tmp_path: Path) -> None:
    """Houses that do not meet have what they would have alone, word for word."""
    write_catalog(tmp_path)
    write_house(tmp_path / "elm-street", (20, 10), JUNE)
    write_house(tmp_path / "pine", (5, 50), LATER)
    both = planned(tmp_path)
    assert [len(group.places) for group, _ in both.groups] == [1, 1]
    for name, made in zip(("elm-street", "pine"), both.made, strict=True):
        with only_plans():
            assert made.book == proven_plan(tmp_path / name)


def test_a_day_of_turnaround(tmp_path: Path) -> None:
    """Pine begins on the day after Elm Street ends; with a day between for fetching, the rug is not there in time."""
    write_catalog(tmp_path)
    write_house(tmp_path / "elm-street", (20, 10), None, stay={"from": JUNE[0], "until": JUNE[1], "turnaround": 1})
    write_house(tmp_path / "pine", (5, 10), LATER)
    assert chosen(planned(tmp_path)) == [["hall", "study"], ["paint"]]
    write_house(tmp_path / "elm-street", (20, 10), JUNE)
    assert chosen(planned(tmp_path)) == [["hall", "study"], ["hall", "study"]]


def test_a_job_without_a_stay_holds_all_the_time(tmp_path: Path) -> None:
    """It keeps its pieces from everybody, and says so."""
    write_catalog(tmp_path)
    write_house(tmp_path / "elm-street", (20, 10), None)
    write_house(tmp_path / "pine", (5, 50), ("2030-01-01", "2030-01-05"))
    elm, pine = (made.book for made in planned(tmp_path).made)
    assert "Ivory rug stands in Elm Street all the time: this plan does without it." in pine.notes
    assert any(note.startswith("Elm Street has no `stay` in its brief") for note in elm.notes)


def test_who_shares(tmp_path: Path) -> None:
    """One catalogue, however it is named, with a stock, and days in common: else jobs share nothing."""
    write_street(tmp_path)
    write_house(tmp_path / "quay", (1, 1), JUNE, catalog="../oak-lane/../catalog.yaml")
    write_house(tmp_path / "wharf", (1, 1), JUNE, catalog="../other.yaml")
    (tmp_path / "other.yaml").write_bytes((tmp_path / "catalog.yaml").read_bytes())
    write_house(tmp_path / "zoo", (1, 1), ("2031-01-01", "2031-01-02"))
    assert [group.places for group in groups(read_street(tmp_path))] == [(0, 1, 2, 3), (4,), (5,)]
    write_catalog(tmp_path, [{**RUG, "stock": None}, {**LAMP, "stock": None}])
    assert [group.places for group in groups(read_street(tmp_path))] == [(number,) for number in range(6)]


def test_musts_that_want_one_rug(tmp_path: Path) -> None:
    """Two houses that must have it on the same days: the piece, the day and the houses are named."""
    write_catalog(tmp_path)
    write_house(tmp_path / "elm-street", (20, 10), JUNE, must=["hall"])
    write_house(tmp_path / "oak-lane", (20, 10), OVERLAPPING, must=["hall"])
    with only_plans():
        found = plan_street(tmp_path)
    assert isinstance(found, NotTogether)
    assert found.proven
    assert {(one.piece, one.jobs) for one in found.wanted} >= {("rug", (0, 1))}


def test_a_job_without_a_plan_of_its_own(tmp_path: Path) -> None:
    """The house whose must is too dear is named; nothing else is asked."""
    write_street(tmp_path)
    write_house(tmp_path / "oak-lane", (30, 10), OVERLAPPING, must=["hall"], budget=5)
    with only_plans():
        found = plan_street(tmp_path)
    assert isinstance(found, NoPlans)
    assert [at for at, _ in found.alone] == [1]


@pytest.mark.parametrize("number", range(12))
def test_random_streets_equal_trying_everything(tmp_path: Path, number: int) -> None:
    """The sums of what is left and spent are those of every set of every house beside every other."""
    agrees(tmp_path, number)


@pytest.mark.slow
@pytest.mark.parametrize("block", range(8))
def test_many_more_random_streets(tmp_path: Path, block: int) -> None:
    """A hundred and sixty more."""
    for number in range(100 + block * 20, 120 + block * 20):
        agrees(tmp_path / str(number), number)


def agrees(folder: Path, number: int) -> None:
    """One street planned, and tried out by a path that shares no code with it."""
    write_random_street(folder, number)
    with only_plans():
        found = plan_street(folder)
    right = slow(folder)
    if right is None:
        assert not isinstance(found, Together), number
        return
    assert isinstance(found, Together), number
    books = [made.book for made in found.made]
    jobs = [read_job(folder / job.name, folder / "catalog.yaml") for job in read_street(folder)]
    mine = [
        left(job, book.hazard_points_after, book.points_after, book.spent_minor)
        for job, book in zip(jobs, books, strict=True)
    ]
    assert summed(mine) == right, number
    assert all(shared.proven for _, shared in found.groups), number


def left(job: Job, hazards: int, points: int, spent: int) -> tuple[int, int, int]:
    """What a plan leaves, in the order of wishes."""
    return (hazards, points, spent) if job.hazards_first else (0, hazards + points, spent)


def summed(each: Sequence[tuple[int, int, int]]) -> tuple[int, ...]:
    """Entry by entry."""
    return tuple(map(sum, zip(*each, strict=True)))


def slow(folder: Path) -> tuple[int, ...] | None:
    """Every set of every house beside every set of the others, day by day."""
    reads = read_street(folder)
    stock = {one.product: one.stock for one in reads[0].catalog.products if one.stock is not None}
    stays = [stay_of(job) for job in reads]
    dated = [stay for stay in stays if stay is not None]
    days = range(min((stay[0] for stay in dated), default=0), max((stay[1] for stay in dated), default=0) + 1)
    each = [offers(read_job(folder / job.name, folder / "catalog.yaml"), job, stock) for job in reads]
    sums = [
        summed([one[0] for one in plans])
        for plans in product(*each)
        if not too_many(Stock(stock, tuple(stays)), [one[1] for one in plans], days)
    ]
    return min(sums, default=None)


def offers(job: Job, read: Read, stock: dict[str, int]) -> list[tuple[tuple[int, int, int], Packs]]:
    """Every set that one house can do: what it leaves, and what it holds. Of equals by pieces only the best."""
    found: dict[Packs, tuple[int, int, int]] = {}
    most = money(job)
    for some in subsets(job):
        if most is None or some.least <= most:
            packs = taken(read, some.ids, stock)
            mine = left(job, some.hazards, some.points, some.least)
            if all(count <= stock[piece] for piece, count in packs):
                found[packs] = min(mine, found.get(packs, mine))
    return [(mine, packs) for packs, mine in found.items()]


def taken(read: Read, chosen_ids: Sequence[str], stock: dict[str, int]) -> Packs:
    """Whole packs from the stock that some remedies take, counted anew."""
    found = []
    for piece in sorted(stock):
        pack = read.catalog.product(piece).pack
        remedies = [one for one in read.catalog.remedies if one.remedy in chosen_ids]
        used = sum(units for one in remedies for name, units in one.uses if name == piece)
        if used:
            found.append((piece, -int(-used // pack)))
    return tuple(found)


def test_two_folders_said_alike(tmp_path: Path) -> None:
    """Elm_street is told that the rug stands in elm-street, not in itself."""
    write_catalog(tmp_path)
    write_house(tmp_path / "elm-street", (30, 10), JUNE)
    write_house(tmp_path / "elm_street", (20, 10), JUNE)
    _, other = (made.book for made in planned(tmp_path).made)
    assert "Ivory rug stands in elm-street until 4 July: this plan does without it." in other.notes


@pytest.mark.parametrize(("elm", "oak"), [("nails", "tacks"), ("tacks", "nails")])
def test_fewest_holes_in_all_come_before_money(tmp_path: Path, elm: str, oak: str) -> None:
    """Without the rug, nails leave five holes for 10.00 and tacks one for 20.00: who has no tacks gets the rug."""
    ways: list[Raw] = [
        {"remedy": "hall", "answers": {"f1": 1}, "uses": {"rug": 1}, "pick_one": "floor"},
        {"remedy": "nails", "answers": {"f1": 1}, "cost": 10, "pick_one": "floor", "spends": {"pins": 5}},
        {"remedy": "tacks", "answers": {"f1": 1}, "cost": 20, "pick_one": "floor", "spends": {"pins": 1}},
    ]
    write_catalog(tmp_path, [RUG], ways)
    for name, never in (("elm-street", elm), ("oak-lane", oak)):
        write_house(tmp_path / name, (20,), JUNE, lease={"reversible_first": True}, never=[never])
    found = planned(tmp_path)
    assert sorted(chosen(found)) == [["hall"], ["tacks"]]
    assert [shared.left for _, shared in found.groups] == [(0, 0, 0, 1, 8000)]
    assert all(shared.proven for _, shared in found.groups)


class Late:
    """A clock that jumps far ahead while a job is fitted anew, which throws away what was answered before."""

    def __init__(self) -> None:
        self.ahead = 0.0

    def __call__(self) -> float:
        return time.monotonic() + self.ahead

    def fitted(self, seat: Seat, _: Packs, __: Wish) -> bool:
        """Stands in for `fitted_more`."""
        self.ahead = 1e6
        seat.earlier = (seat.whole, seat.answers)
        seat.answers = {(): seat.answers[()]}
        return True


def test_a_plan_in_hand_is_kept_where_the_clock_ends(tmp_path: Path) -> None:
    """The clock ends while jobs are fitted anew: what was shared out before is the plan, and is not called proven."""
    write_street(tmp_path)
    late, nothing = Late(), NoShare(False)
    jobs, names = read_street(tmp_path), ["Elm Street", "Oak Lane", "Pine"]
    once = Mock(wraps=share, side_effect=[DEFAULT, nothing])
    with (
        only_plans(),
        patch("budgetfix.pipeline.lanes.fitted_more", late.fitted),
        patch("budgetfix.pipeline.portfolio.share", once),
    ):
        found = planned_together(jobs, names, Wish(60.0, late), 1)
    assert once.call_count == 2
    assert isinstance(found, Together)
    assert chosen(found) == [["study"], ["hall", "paint"], ["study"]]
    assert not any(shared.proven for _, shared in found.groups)


PEOPLE = {"ann": {"priorities": {"f1": 3}}, "ben": {"priorities": {"f2": 3, "f1": 0.5}}}


def test_two_people_in_one_of_the_houses(tmp_path: Path) -> None:
    """A fair plan stays what it would be alone where nothing is shared; else it is made of the pieces left to it."""
    write_catalog(tmp_path)
    write_house(tmp_path / "elm-street", (20, 10), JUNE, people=PEOPLE, budget=65)
    write_house(tmp_path / "quay", (20, 10), ("2031-01-01", "2031-01-02"), people=PEOPLE, budget=65)
    write_house(tmp_path / "pine", (90, 10), OVERLAPPING)
    elm, pine, quay = (made.book for made in planned(tmp_path).made)
    with only_plans():
        assert quay == proven_plan(tmp_path / "quay")
    assert [len(book.sides) for book in (elm, pine, quay)] == [2, 0, 2]
    assert "hall" in ids(pine)
    assert "hall" not in ids(elm)
    assert "Ivory rug stands in Pine until 20 July: this plan does without it." in elm.notes
