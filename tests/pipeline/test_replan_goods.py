"""Goods after the plan: bought and not used, sold out, on the way, hire that is paid for, errands, limits, groups."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from budgetfix.intake.plan_back import read_back
from budgetfix.outcome.since import Fact
from budgetfix.pipeline.rest_done import Done, done_of
from budgetfix.pipeline.rest_used import with_used
from budgetfix.pipeline.writing import write_replanned
from tests.pipeline.listed_job import Remedy, write_job
from tests.pipeline.ticked import back, ids, lines, plan_of, read_at, rest


def test_bought_and_not_used(tmp_path: Path) -> None:
    """The rug is at home when something cheaper does as much: it is used if that is best, and told where it is not."""
    remedies: list[Remedy] = [
        {"remedy": "rug", "answers": {"f1": 1}, "uses": {"rug": 1}, "hours": 2, "pick_one": "floor"},
        {"remedy": "mat", "answers": {"f1": 0.9}, "hours": 1, "pick_one": "floor"},
    ]
    products = [{"product": "rug", "name": "Rug", "price": 30, "shop": "mill"}]
    shops = [{"shop": "mill", "return_days": 14}]
    write_job(tmp_path, (100,), remedies, {"budget": 40, "hours": [2, 1]}, {"products": products, "shops": shops})
    job = read_at(tmp_path)
    book = plan_of(job)
    assert ids(book) == ["rug"]
    used = rest(job, back(book, {"product:rug@mill": "bought"}))
    assert (ids(used.book), used.book.spent_minor, used.since.unused) == (["rug"], 0, ())
    short = {**dict(job.brief), "hours": job.brief.hours[1:] if job.brief.hours else None}
    less = type(job)(**{**vars(job), "brief": type(job.brief)(**short)})
    left = rest(less, back(book, {"product:rug@mill": "bought"}))
    assert (ids(left.book), left.since.unused) == (["mat"], (("Rug", date(2026, 6, 15)),))


def test_sold_out(tmp_path: Path) -> None:
    """The shop has no rug: the next best is taken, the rug is out of the question, and both are said."""
    remedies: list[Remedy] = [
        {
            "remedy": f"{id}-rug",
            "name": f"{id.title()} rug",
            "answers": {"f1": share},
            "uses": {id: 1},
            "pick_one": "rug",
        }
        for id, share in (("wool", 1), ("jute", 0.8))
    ]
    products = [{"product": "wool", "name": "Wool 2 x 3", "price": 30}, {"product": "jute", "price": 20}]
    write_job(tmp_path, (100,), remedies, {"budget": 40, "hours": None}, {"products": products})
    job = read_at(tmp_path)
    found = rest(job, back(plan_of(job), {"product:wool": "sold out"}))
    assert (ids(found.book), found.left.paid.spent_minor) == (["jute-rug"], 0)
    assert [(one.names, one.why) for one in found.since.off] == [(("Wool rug",), Fact("sold out", "Wool 2 x 3"))]
    assert [(one.names, one.why) for one in found.since.on] == [(("Jute rug",), Fact("instead", "Wool rug"))]
    assert {row.id: row.why for row in found.book.left_out} == {"wool-rug": "Wool 2 x 3: it is sold out"}


def test_half_a_tin_is_left(tmp_path: Path) -> None:
    """A tin does two walls: one is painted, what is left in the tin does the other without a second tin."""
    remedies: list[Remedy] = [
        {"remedy": f"wall{at}", "answers": {f"f{at}": 1}, "uses": {"tin": "1.2"}, "hours": 1} for at in (1, 2)
    ]
    products = [{"product": "tin", "name": "Tin", "price": 22, "pack": 2.5, "unit": "L"}]
    write_job(tmp_path, (100, 90), remedies, {"budget": 30, "hours": [1, 1]}, {"products": products})
    job = read_at(tmp_path)
    found = rest(job, back(plan_of(job), {"product:tin": "bought"}, done=("wall1#1",)))
    assert (ids(found.book), found.book.money) == (["wall2"], ())
    assert found.left.job.catalog.product("tin").on_hand * 10 == 13


def delivered(folder: Path) -> None:
    """A lamp that comes after seven days, a shelf from stock at once; three Saturdays."""
    remedies: list[Remedy] = [
        {"remedy": "lamp", "answers": {"f1": 1}, "uses": {"lamp": 1}, "hours": 1},
        {"remedy": "shelf", "answers": {"f2": 1}, "uses": {"shelf": 1}, "hours": 1},
    ]
    products = [
        {"product": "lamp", "name": "Lamp", "price": 30, "lead_days": 7, "shop": "post"},
        {"product": "shelf", "name": "Shelf", "price": 20, "shop": "mill"},
    ]
    hours = [{"date": f"2026-06-{day}", "start": "09:00", "hours": 4} for day in ("06", "13", "20")]
    errands = [{"errand": "round", "name": "To the mill", "shops": ["mill"], "hours": 1}]
    brief = {"budget": 60, "hours": hours, "ordered": "2026-06-01", "errands": errands}
    write_job(folder, (100, 50), remedies, brief, {"products": products, "shops": [{"shop": "mill"}, {"shop": "post"}]})


def placed(book: object) -> dict[str, int | None]:
    """The session of each task, by candidate."""
    return {task.candidate: task.session for task in book.tasks}  # type: ignore[attr-defined]


def test_what_is_on_the_way_comes_when_it_was_to_come(tmp_path: Path) -> None:
    """Ordered on the first, the lamp is there on the eighth; ordered on the eighth, it is there on the fifteenth."""
    delivered(tmp_path)
    job = read_at(tmp_path)
    book = plan_of(job)
    assert placed(book)["lamp"] == 2
    on = date(2026, 6, 8)
    assert placed(rest(job, back(book, {"product:lamp@post": "bought"}), on).book)["lamp"] == 2
    assert placed(rest(job, back(book), on).book)["lamp"] == 3


def test_what_is_in_hand_needs_no_errand(tmp_path: Path) -> None:
    """The shelf is at home: nobody goes to the mill. Where it is not, the round is made, also a second time."""
    delivered(tmp_path)
    job = read_at(tmp_path)
    book = plan_of(job)
    assert "errand:round" in placed(book)
    assert "errand:round" not in placed(rest(job, back(book, {"product:shelf@mill": "bought"})).book)
    again = rest(job, back(book, done=("errand:round#1",)), date(2026, 6, 6)).book
    assert next((task.candidate, task.step, task.steps) for task in again.tasks) == ("errand:round", 2, 1)


def hired(folder: Path, own: bool = False) -> None:
    """A saw for 10.00 a session or 35.00 for good; three jobs with it, each a session long."""
    remedies: list[Remedy] = [
        {"remedy": f"m{at}", "answers": {f"f{at}": 1}, "hours": 1, "tools": ["saw"]} for at in (1, 2, 3)
    ]
    tools = [{"tool": "saw", "name": "Saw", "hire_per_session": 10, "buy": 35, "own": own}]
    write_job(folder, (100, 90, 80), remedies, {"budget": 40, "hours": [1, 1, 1]}, {"tools": tools})


def test_sessions_of_hire_that_are_paid_for_are_free(tmp_path: Path) -> None:
    """Three sessions are paid, one is used: the two others cost nothing more."""
    hired(tmp_path)
    job = read_at(tmp_path)
    book = plan_of(job)
    assert lines(book) == [("Hire: Saw", 3000)]
    found = rest(job, back(book, {"hire:Hire: Saw": "bought"}, done=("m1#1",)))
    assert (found.left.rest.prepaid, found.left.rest.held) == ((("saw", 3),), (("saw", (0,)),))
    assert found.book.money == ()
    assert ids(found.book) == ["m2", "m3"]


def shared_hire(folder: Path, hours: list[float], price: dict[str, float], budget: float = 10) -> None:
    """A saw by the session; two jobs of an hour with it."""
    remedies: list[Remedy] = [
        {"remedy": id, "answers": {f"f{at}": 1}, "hours": 1, "tools": ["saw"]} for at, id in enumerate("ab", 1)
    ]
    tools = [{"tool": "saw", "name": "Saw", **price}]
    brief = {"budget": budget, "hours": hours, "learn": False}
    write_job(folder, (100, 90), remedies, brief, {"tools": tools})


def test_hire_goes_on_while_its_session_does(tmp_path: Path) -> None:
    """One hire does two jobs in one session: when the first is done, the second costs nothing more."""
    shared_hire(tmp_path, [2], {"hire_per_session": 10})
    job = read_at(tmp_path)
    book = plan_of(job)
    found = rest(job, back(book, {"hire:Hire: Saw": "bought"}, done=("a#1",)))
    assert (ids(found.book), found.book.money) == (["b"], ())
    again = rest(job, back(found.book, done=("b#1",)))
    assert (ids(again.book), again.left.paid.spent_minor) == ([], 1000)


def test_hire_of_a_session_is_for_that_session_only(tmp_path: Path) -> None:
    """The first job took both hours: in the next session the saw must be hired again, and that is not in the money."""
    shared_hire(tmp_path, [2, 1], {"hire_per_session": 10})
    job = read_at(tmp_path)
    told = {"bought": {"hire:Hire: Saw": "bought"}, "done": ("a#1",), "minutes": {"a#1": 120}}
    book = plan_of(job)
    assert ids(rest(job, back(book, **told)).book) == []  # type: ignore[arg-type]
    more = rest(read_at(tmp_path, "20"), back(book, **told))  # type: ignore[arg-type]
    assert (ids(more.book), lines(more.book)) == (["b"], [("Hire: Saw", 1000)])


def test_paid_hire_stays_usable_where_it_is_hired_out_no_more(tmp_path: Path) -> None:
    """Two sessions were paid for; now the shop only sells the saw: the second one is still there, a third is not."""
    shared_hire(tmp_path, [1, 1], {"hire_per_session": 10}, 40)
    told = back(plan_of(read_at(tmp_path)), {"hire:Hire: Saw": "bought"}, done=("a#1",))
    shared_hire(tmp_path, [1, 1], {"buy": 200}, 40)
    found = rest(read_at(tmp_path), told)
    assert (ids(found.book), found.book.money) == (["b"], ())
    shared_hire(tmp_path, [1, 0.5, 0.5], {"buy": 200}, 40)
    assert ids(rest(read_at(tmp_path), told).book) == []


def test_hire_beyond_what_is_paid_for_is_paid(tmp_path: Path) -> None:
    """Work with the saw that is done takes the paid sessions first; one that nobody paid for is still to be paid."""
    hired(tmp_path)
    job = read_at(tmp_path)
    first = rest(job, back(plan_of(job), {"hire:Hire: Saw": "bought"}, done=("m1#1",)))
    assert (first.left.rest.prepaid, first.left.rest.held) == ((("saw", 3),), (("saw", (0,)),))
    again = rest(job, back(first.book, done=("m2#1",)))
    assert (again.left.rest.prepaid, again.left.rest.held) == ((("saw", 2),), (("saw", (1,)),))
    assert (ids(again.book), again.book.money) == (["m3"], ())


def test_a_tool_that_was_bought_is_owned(tmp_path: Path) -> None:
    """A ladder for 20.00 is at home: what needs it costs nothing more; one that went back cannot be had."""
    remedies: list[Remedy] = [
        {"remedy": f"m{at}", "answers": {f"f{at}": 1}, "hours": 1, "tools": ["ladder"]} for at in (1, 2)
    ]
    tools = [{"tool": "ladder", "name": "Ladder", "buy": 20}]
    write_job(tmp_path, (100, 90), remedies, {"budget": 20, "hours": [1, 1]}, {"tools": tools})
    job = read_at(tmp_path)
    book = plan_of(job)
    found = rest(job, back(book, {"tool:Ladder": "bought"}))
    assert (ids(found.book), found.book.spent_minor) == (["m1", "m2"], 0)
    assert ids(rest(job, back(book, {"tool:Ladder": "returned"})).book) == []


def test_limits_groups_and_needs_hold_for_all_together(tmp_path: Path) -> None:
    """Two of three holes are drilled; what shares a group with done work is out, what needs it is not."""
    remedies: list[Remedy] = [
        {"remedy": "a", "answers": {"f1": 1}, "hours": 1, "spends": {"holes": 2}, "pick_one": "g"},
        {"remedy": "b", "answers": {"f1": 1, "f2": 1}, "hours": 3, "pick_one": "g"},
        {"remedy": "c", "answers": {"f2": 1}, "hours": 1, "spends": {"holes": 2}},
        {"remedy": "d", "answers": {"f3": 1}, "hours": 1, "spends": {"holes": 1}, "needs": ["a"]},
    ]
    write_job(tmp_path, (100, 20, 60), remedies, {"hours": [1, 1, 1], "limits": {"holes": 3}})
    job = read_at(tmp_path)
    book = plan_of(job)
    assert ids(book) == ["a", "d"]
    found = rest(job, back(book, done=("a#1",)))
    assert ids(found.book) == ["d"]
    out = {row.id: row.why for row in found.book.left_out}
    assert out["b"] == "instead of it: a, which is done"
    assert out["c"] == "it goes over a limit by itself"


def test_reliefs_of_done_work_go_on_working(tmp_path: Path) -> None:
    """Half of a fault is gone; the next half takes half of what is left: 100, 50, 25."""
    remedies: list[Remedy] = [{"remedy": id, "answers": {"f1": 0.5}, "hours": 1} for id in ("a", "b")]
    write_job(tmp_path, (100,), remedies, {"hours": [1, 1]})
    job = read_at(tmp_path)
    book = plan_of(job)
    assert (book.points_before, book.points_after) == (100, 25)
    found = rest(job, back(book, done=("a#1",))).book
    assert (found.points_before, found.points_after, ids(found)) == (50, 25, ["b"])


def test_a_catalogue_that_changed(tmp_path: Path) -> None:
    """The lamp costs 10.00 more now: it does not fit any more, and that is why."""
    products = [{"product": "lamp", "name": "Lamp", "price": 20}, {"product": "rug", "name": "Rug", "price": 20}]
    remedies: list[Remedy] = [
        {"remedy": id, "answers": {f"f{at}": 1}, "uses": {id: 1}} for at, id in enumerate(("rug", "lamp"), 1)
    ]
    write_job(tmp_path, (100, 90), remedies, {"budget": 40, "hours": None}, {"products": products})
    book = plan_of(read_at(tmp_path))
    told = back(book, {"product:rug": "bought"})
    dearer = [{"product": "lamp", "name": "Lamp", "price": 30}, products[1]]
    write_job(tmp_path, (100, 90), remedies, {"budget": 40, "hours": None}, {"products": dearer})
    found = rest(read_at(tmp_path), told)
    assert ids(found.book) == ["rug"]
    assert [(one.names, one.why) for one in found.since.off] == [(("lamp",), Fact("price", "Lamp", 1000))]


PAD = {"product": "pad", "name": "Pad", "shop": "mill", "price": 30}


def pads(folder: Path, budget: float, **pad: object) -> None:
    """Two remedies of an hour, a and b, that use a pad each, at 30.00."""
    remedies: list[Remedy] = [
        {"remedy": id, "answers": {f"f{at}": 1}, "uses": {"pad": 1}, "hours": 1} for at, id in enumerate("ab", 1)
    ]
    catalog = {"products": [{**PAD, **pad}], "shops": [{"shop": "mill", "tax": "10%"}]}
    write_job(folder, (100, 90), remedies, {"budget": budget, "hours": [3, 3]}, catalog)


def test_of_a_line_for_two_only_what_done_work_used_was_bought(tmp_path: Path) -> None:
    """Work a is done: one of the two pads was bought, with its tax; the other is still to buy, each time."""
    pads(tmp_path, 100)
    job = read_at(tmp_path)
    first = rest(job, back(plan_of(job), done=("a#1",)))
    second = rest(job, back(first.book))
    assert [(one.left.paid.spent_minor, one.book.spent_minor) for one in (first, second)] == [(3300, 3300)] * 2
    assert first.left.paid.counted == ("product:pad@mill",)


def test_what_was_on_hand_was_used_first(tmp_path: Path) -> None:
    """There was a pad at home: a is done with it, and the one for b is still to buy."""
    pads(tmp_path, 100, on_hand=1)
    job = read_at(tmp_path)
    found = rest(job, back(plan_of(job), done=("a#1",)))
    assert (found.left.paid.spent_minor, found.book.spent_minor) == (0, 3300)


def test_what_was_ticked_was_used_first(tmp_path: Path) -> None:
    """A pad was bought at first; with more money a second one is planned, and a is done with the first."""
    pads(tmp_path, 40)
    first = plan_of(read_at(tmp_path))
    more = read_at(tmp_path, "90")
    second = rest(more, back(first, {"product:pad@mill": "bought"}))
    third = rest(more, back(second.book, done=("a#1",)))
    assert (third.left.paid.spent_minor, third.book.spent_minor, ids(third.book)) == (3300, 3300, ["b"])


def test_all_packs_that_done_work_used_were_bought(tmp_path: Path) -> None:
    """Both are done: both pads were bought, and a line that the shop has not got counts for nothing."""
    pads(tmp_path, 100)
    job = read_at(tmp_path)
    assert rest(job, back(plan_of(job), done=("a#1", "b#1"))).left.paid.spent_minor == 6600
    gone = rest(job, back(plan_of(job), {"product:pad@mill": "sold out"}, done=("a#1",)))
    assert gone.left.paid.spent_minor == 0


def test_no_line_is_ticked_for_work_that_is_not_done(tmp_path: Path) -> None:
    """With nothing done the lines are as they were; with a done, the line for both is cut to one pack of 30.00."""
    pads(tmp_path, 100)
    job = read_at(tmp_path)
    so_far = back(plan_of(job))
    assert with_used(so_far.lines, Done(), job.catalog) == list(so_far.lines)
    told = back(plan_of(job), done=("a#1",))
    cut = with_used(told.lines, done_of(told), job.catalog)[0]
    assert (cut.state, cut.paid_minor, cut.planned.line.packs, cut.planned.whole_minor) == ("bought", 3000, 1, 6000)


def test_a_workbook_keeps_what_was_worked_out_apart_from_what_was_typed(tmp_path: Path) -> None:
    """Written and read back with nothing typed, the rest has cost what it had cost, and so has the one after it."""
    remedies: list[Remedy] = [{"remedy": "m1", "answers": {"f1": 1}, "steps": [{"hours": 1}] * 3}]
    write_job(tmp_path, (100,), remedies, {"budget": 100, "hours": [1, 1, 1], "labour": 12})
    job = read_at(tmp_path)
    told = back(plan_of(job), done=("m1#1",))
    for _ in range(3):
        found = rest(job, told)
        assert (found.left.paid.spent_minor, found.book.spent_minor) == (1200, 2400)
        write_replanned(tmp_path, found.book)
        again, problems = read_back(tmp_path / "plan.xlsx", "USD")
        assert again is not None, problems
        told = again
        assert [one.planned.worked_minor for one in told.lines] == [1200, None]
