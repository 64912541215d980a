"""One rug in the store: who gets it, what is said where it is not there, and what the days cost."""

from __future__ import annotations

from pathlib import Path

from budgetfix.cli.no_plan import no_plan
from budgetfix.optimize.problem import NoPlan
from budgetfix.outcome.book import PlanBook
from budgetfix.pipeline.reading import JobOptions, read
from tests.pipeline.listed_job import TODAY, Remedy, chosen_plan, ids, proven_plan, write_job

STAY = {"from": "2026-06-04", "until": "2026-07-04"}
REMEDIES: list[Remedy] = [
    {"remedy": "hall", "answers": {"f1": 1}, "uses": {"rug": 1}},
    {"remedy": "study", "answers": {"f2": 1}, "uses": {"rug": 1}},
]


def plan(folder: Path, rug: dict[str, object], **brief: object) -> PlanBook:
    """A proven plan for two rooms that want one rug; the hall gains more by it."""
    product = {"product": "rug", "name": "Ivory rug", "price": 60, **rug}
    write_job(folder, [20, 10], REMEDIES, {"stay": STAY, **brief}, {"products": [product]})
    return proven_plan(folder)


def test_one_piece_goes_where_it_does_most(tmp_path: Path) -> None:
    """The hall gets the only rug; with two of them the study gets one as well."""
    assert ids(plan(tmp_path, {"stock": 1})) == ["hall"]
    assert ids(plan(tmp_path, {"stock": 2})) == ["hall", "study"]
    assert ids(plan(tmp_path, {})) == ["hall", "study"]


def test_the_line_says_for_how_many_days(tmp_path: Path) -> None:
    """Thirty days at a price for 14 are three terms: 180.00 a rug, and the line says 42 days."""
    line = plan(tmp_path, {"stock": 1, "term_days": 14}).money[0]
    assert (line.unit_price_minor, line.line_minor, line.days) == (18000, 18000, 42)


def test_what_is_away_is_left_out_with_the_reason(tmp_path: Path) -> None:
    """A rug that comes back from another house too late is for nobody."""
    book = plan(tmp_path, {"stock": 1, "free_from": "2026-06-10"})
    assert [row.why for row in book.left_out] == ["Ivory rug: not free before 10 June 2026"] * 2
    assert [row.why for row in plan(tmp_path, {"stock": 0}).left_out] == ["Ivory rug: none is there"] * 2


def test_musts_that_ask_for_more_than_there_is(tmp_path: Path) -> None:
    """Two musts and one rug: all three are named, and each given up would do."""
    product = {"product": "rug", "name": "Ivory rug", "price": 60, "stock": 1}
    write_job(tmp_path, [20, 10], REMEDIES, {"must": ["hall", "study"]}, {"products": [product]})
    found = chosen_plan(tmp_path)
    assert isinstance(found, NoPlan)
    assert "\n".join(no_plan(found, read(tmp_path, JobOptions(), TODAY))) == (
        "No plan keeps these together:\n"
        "  must: hall\n"
        "  must: study\n"
        "  the stock of Ivory rug (1 there)\n"
        "Any one of these, given up, would let a plan exist:\n"
        "  must: hall\n"
        "  must: study\n"
        "  the stock of Ivory rug (1 there)"
    )


def test_a_must_that_is_never_there(tmp_path: Path) -> None:
    """A must whose rug is away: the reason is told by name."""
    product = {"product": "rug", "name": "Ivory rug", "price": 60, "stock": 1, "free_until": "2026-07-01"}
    write_job(tmp_path, [20, 10], REMEDIES, {"must": ["hall"], "stay": STAY}, {"products": [product]})
    found = chosen_plan(tmp_path)
    assert isinstance(found, NoPlan)
    text = " ".join(" ".join(no_plan(found, read(tmp_path, JobOptions(), TODAY))).split())
    assert "hall could never be done: Ivory rug: free only until 1 July 2026." in text
