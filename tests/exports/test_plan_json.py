from __future__ import annotations

import json
from dataclasses import replace
from fractions import Fraction

import pytest

from budgetfix.base.twin import Twin
from budgetfix.exports.plan_json import inspect_object, plan_object, rules_object
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.rule import Band, Rule
from tests.exports.sample_book import BOOK, IDS, NO_HOURS, NO_LIMIT, NOTHING

PLAN_KEYS = (
    "schema", "currency", "budget_minor", "spent_minor", "minutes_available", "minutes_used", "hazards_before",
    "hazards_after", "points_before", "points_after", "improvement", "proven", "bound", "rounds", "candidates",
    "chosen", "purchases", "left", "new", "sessions_used", "plans", "files",
)  # fmt: skip
RULE_KEYS = {
    "slug", "measures", "unit", "band", "aim", "glaring", "weight", "family", "safety", "profiles", "basis", "source",
}  # fmt: skip
ROD = Finding(
    rule="rod-too-narrow",
    title="rod too narrow",
    subject="Big window",
    room="front room",
    value=50.8,
    unit="mm",
    band=Band(low=Twin(8, 200), bad_low=0.0),
    severity=Fraction(3, 4),
    raw=Fraction(300),
    certain=True,
    safety=False,
    family="window",
    family_scope="Big window",
    basis="common practice",
    points=375,
)
RULE = Rule(
    slug="rod-too-narrow",
    title="Rod too narrow",
    measures="rod past the frame",
    unit="mm",
    band=Band(low=Twin(8, 200), bad_low=0.0, aim=(Twin(10), Twin(12))),
    weight=Fraction(3),
    subjects=lambda _: (),
    measure=lambda *_: None,
    basis="common practice",
)


@pytest.mark.parametrize("plan", [BOOK, NOTHING, NO_HOURS, NO_LIMIT], ids=["usual", "empty", "no hours", "no budget"])
def test_a_plan_has_every_key_and_is_plain_json(plan: object) -> None:
    """The agreed keys are all there, in their order, and only what JSON knows is in them."""
    made = plan_object(plan, ("front-room/plan.xlsx",))  # type: ignore[arg-type]
    assert tuple(key for key in made if key in PLAN_KEYS) == PLAN_KEYS
    assert json.loads(json.dumps(made)) == made


def test_the_sums_of_a_plan() -> None:
    """Points leave hazards out, hazards are counts, minutes are person-minutes by session."""
    made = plan_object(BOOK, ("a/plan.xlsx", "a/buy.csv"))
    assert (made["improvement"], made["points_before"], made["points_after"]) == (953, 1553, 600)
    assert (made["hazards_before"], made["hazards_after"], made["schema"]) == (1, 0, 1)
    assert (made["minutes_available"], made["minutes_used"], made["sessions_used"]) == ([360, 240], [215, 105], 2)
    assert (made["rounds"], made["files"]) == ({"inspections": 3, "placings": 2}, ["a/plan.xlsx", "a/buy.csv"])


def test_purchases_add_up_to_what_is_spent() -> None:
    """Every line of money is there, delivery and tax too."""
    lines = plan_object(BOOK, ())["purchases"]
    assert isinstance(lines, list)
    assert sum(line["line_minor"] for line in lines) == BOOK.spent_minor
    assert lines[0] == {
        "kind": "product",
        "product": "rod",
        "shop": "harrow",
        "packs": 1,
        "unit_price_minor": 3900,
        "line_minor": 3900,
    }


def test_errands_are_no_remedies() -> None:
    """A round of shops takes minutes, but is not among the chosen; steps stand in their own order."""
    chosen = plan_object(BOOK, ())["chosen"]
    assert isinstance(chosen, list)
    assert [row["id"] for row in chosen] == list(IDS)
    rod = next(row for row in chosen if row["id"] == "rod")
    assert rod["steps"] == [
        {"session": 1, "minutes": 10, "people": 1},
        {"session": 2, "minutes": 50, "people": 1},
    ]


def test_what_is_left_and_what_is_new() -> None:
    """Faults still there, better or worse are left; a listed one goes by its id, a measured one by its rule."""
    made = plan_object(BOOK, ())
    assert isinstance(made["left"], list)
    assert isinstance(made["new"], list)
    assert [row.get("rule", row.get("fault")) for row in made["left"]] == [
        "picture-too-small",
        "panels-skimpy",
        "screen-too-far",
        "f1",
    ]
    assert made["left"][-1] == {"fault": "f1", "subject": "door", "points": 100, "safety": False}
    assert made["new"] == [{"rule": "rod-hung-low", "subject": "Big window", "points": 12, "safety": False}]


def test_no_hours_and_no_budget_are_null_or_empty() -> None:
    """Without hours both lists are empty, every session null and none used; without a budget it is null."""
    made = plan_object(NO_HOURS, ())
    assert (made["minutes_available"], made["minutes_used"], made["sessions_used"]) == ([], [], 0)
    assert isinstance(made["chosen"], list)
    assert {step["session"] for row in made["chosen"] for step in row["steps"]} == {None}
    assert plan_object(NO_LIMIT, ())["budget_minor"] is None


def test_the_three_plans() -> None:
    """Each in five figures; null where none exists."""
    plans = plan_object(BOOK, ())["plans"]
    assert isinstance(plans, dict)
    assert plans["free"] == {
        "spent_minor": 0,
        "improvement": 350,
        "hazards_after": 1,
        "minutes": 90,
        "chosen": ["lower-tv"],
    }
    nothing = plan_object(NOTHING, ())["plans"]
    assert isinstance(nothing, dict)
    assert (nothing["recommended"], nothing["free"]) == (None, None)


@pytest.mark.parametrize(("metric", "low"), [(True, 200.0), (False, 203.2)])
def test_an_inspection_tells_lengths_in_millimetres(metric: bool, low: float) -> None:
    """2 in measured is 50.8 mm; the band is 200 mm in a metric survey, 8 in exactly in one kept in inches."""
    made = inspect_object((ROD, replace(ROD, subject="Small window", severity=Fraction(0), points=0)), 375, 0, metric)
    assert (made["points"], made["hazards"]) == (375, 0)
    assert isinstance(made["findings"], list)
    first = made["findings"][0]
    wanted = ("rule", "subject", "measured", "unit", "band", "severity", "points", "certain", "basis")
    assert set(wanted) <= set(first)
    assert (first["measured"], first["unit"], first["severity"], first["points"]) == (50.8, "mm", 0.75, 375)
    assert first["band"]["sound"] == [pytest.approx(low), None]
    assert json.loads(json.dumps(made)) == made


def test_a_rule_tells_both_twins_of_its_band() -> None:
    """Inches and millimetres side by side, both written in mm, and every agreed key."""
    made = rules_object((RULE,))[0]
    assert set(made) >= RULE_KEYS
    assert made["band"] == {"mm": [200.0, None], "in": [pytest.approx(203.2), None]}
    assert (made["aim"], made["glaring"], made["weight"]) == ([250.0, 300.0], [0.0, None], 3.0)
    assert json.loads(json.dumps(made)) == made
