"""What stands around the walk: demo data, starters, manual pages, candidates offered, files written."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from budgetfix.catalog.models import Catalog
from budgetfix.catalog.models import Remedy as CatalogRemedy
from budgetfix.inspection.registry import RULES
from budgetfix.intake.plan_ticks import touched
from budgetfix.pipeline.around import BESIDE, SUMS
from budgetfix.pipeline.candidates import offered
from budgetfix.pipeline.demo_data import SCENARIOS, demo_files
from budgetfix.pipeline.manual import kinds_text, page_of, paragraphs, rules_objects, rules_text
from budgetfix.pipeline.plans import CURVE, EXACT_UP_TO, GOOD_SHARE, MOST_SOLVES
from budgetfix.pipeline.starting import STARTERS, starter_files
from budgetfix.pipeline.writing import Touched, refuse_touched, write_plan
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.registry import KINDS
from budgetfix.room.survey import Change
from tests.exports.sample_book import BOOK
from tests.framing.small_jobs import measured_ground
from tests.pipeline.listed_job import Remedy, proven_plan, write_job


def test_every_scenario_has_its_survey_and_brief() -> None:
    """Renter, stager and couple; an unknown one is an error of ours."""
    for scenario in SCENARIOS:
        assert {"survey.yaml", "brief.yaml"} <= set(demo_files(scenario))
    with pytest.raises(KeyError):
        demo_files("palace")


def test_a_new_job_has_a_form_a_catalog_and_a_brief() -> None:
    """In any unit and any currency that exists; the brief names the currency."""
    files = starter_files("in", "JPY")
    assert tuple(files) == STARTERS
    assert b"currency: JPY" in files["brief.yaml"]
    with pytest.raises(ValueError, match="no currency code"):
        starter_files("cm", "XXZ")


def test_every_rule_and_kind_has_a_page_of_eighty_columns() -> None:
    """No line of any page is longer than 79 characters, and none is empty."""
    for name in [*(rule.slug for rule in RULES), *(kind.kind for kind in KINDS)]:
        page = page_of(name)
        assert page is not None
        assert name in page.splitlines()[0]
        assert max(map(len, page.splitlines())) <= 79
    assert page_of("no-such-rule") is None


def test_lists_name_everything_once() -> None:
    """`rules`, `rules --kinds` and `rules --json`."""
    assert rules_text().count("\n  ") == len(RULES)
    assert kinds_text().count("\n  ") == len(KINDS)
    assert len(rules_objects(None)) == len(RULES)
    assert len(rules_objects("rod-too-narrow")) == 1
    assert paragraphs("short\n\nalso short") == "short\n\nalso short"


def test_candidates_are_offered_from_the_survey_alone() -> None:
    """A picture too high and a rug too far away have free remedies; nothing offered costs anything."""
    framed = offered(measured_ground()).framed
    kinds = {one.kind for one in framed.candidates.values()}
    assert {"rehang-picture", "slide-rug"} <= kinds
    assert all(one.cost_minor == 0 and not one.uses for one in framed.candidates.values())


def test_a_move_onto_a_spot_that_is_taken_as_surveyed_is_not_offered() -> None:
    """In a changed room the sofa may have gone; from the survey the bookcase would stand in it. Ours is dropped
    without a word, the user's own is told with the reason.
    """
    onto = Change("furniture", "bookcase", (("wall", "B"), ("from_left", 3000.0)))
    ours = Candidate(id="move~again", kind="move-piece", name="Move it", changes=(onto,), own=True)
    assert "move~again" not in offered(measured_ground(), (ours,)).framed.candidates
    remedy = CatalogRemedy(remedy="mine", name="Mine", on="bookcase", kind="move-piece", set=onto.set)
    base = replace(measured_ground(), catalog=Catalog(remedies=(remedy,)))
    ((told, why),) = offered(base).blocked
    assert (told.id, why) == ("mine", "there is no room for it: bookcase and sofa would share a spot")


def test_an_earlier_plan_is_written_over_until_somebody_ticks(tmp_path: Path) -> None:
    """Twice is no trouble; a file that is no book of ours is left alone."""
    first = write_plan(tmp_path, BOOK)
    assert [Path(name).name for name in first] == [
        "plan.xlsx",
        "plan.html",
        "plan.ics",
        "buy.csv",
        "do.csv",
        "plan-ann.ics",
        "plan-ben.ics",
    ]
    assert not touched(tmp_path / "plan.xlsx")
    write_plan(tmp_path, BOOK)
    (tmp_path / "plan.xlsx").write_bytes(b"mine")
    with pytest.raises(Touched):
        refuse_touched(tmp_path)


def test_the_other_plans_are_asked_for_in_sound_shares() -> None:
    """The recommended plan reaches nine tenths; all that stands beside the best plan takes less time than it may."""
    assert Fraction(9, 10) == GOOD_SHARE
    assert 0 < SUMS < 1
    assert 0 < CURVE < 1
    assert 0 < BESIDE < 1


def test_a_larger_job_gets_marks_and_says_so(tmp_path: Path) -> None:
    """With more options than are worked out one by one, the rows are honest marks, not every sum of money."""
    count = EXACT_UP_TO + 20
    remedies: list[Remedy] = [
        {"remedy": f"r{number:02}", "answers": {f"f{number}": 1}, "cost": round(3 + number % 17 + number / 100, 2)}
        for number in range(1, count + 1)
    ]
    write_job(tmp_path, [5 + number * 7 % 31 for number in range(count)], remedies, {"budget": 300})
    book = proven_plan(tmp_path)
    assert not book.next.complete
    assert 8 <= len(book.more) <= MOST_SOLVES + 2
    spends = [row.spent_minor for row in book.more]
    assert spends == sorted(spends)
    gains = [row.improvement for row in book.more]
    assert gains == sorted(gains)
    assert [row.this_one for row in book.more].count(True) == 1
