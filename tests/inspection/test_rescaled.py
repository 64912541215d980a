"""Inches or millimetres: the same room gives the same figures, and only a band's printed twin tells the two apart."""

from __future__ import annotations

import io
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import Phase, given, settings
from ruamel.yaml import YAML

from budgetfix.base.twin import MM_PER_INCH, Twin
from budgetfix.brief.models import Brief
from budgetfix.forms.survey_form import FORM_OF
from budgetfix.inspection.inspect import judge_one
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import edge_mm
from budgetfix.intake.survey_file import read_survey
from budgetfix.room.items import TABLES
from budgetfix.room.survey import Household, Survey
from tests.inspection.test_cases import FILES, changed, read, survey_of
from tests.inspection.test_lifting import jumbled
from tests.inspection.test_mirrored import ALL, MOVES, ROOMS
from tests.inspection.turned import rebuilt
from tests.laws.source import REPO

Figures = dict[str, tuple[float, float, bool] | None]
MEASURED_FROM_A_TWIN = {
    "screen-glare": "from the eye, 12 in (300 mm) before the seat's back",
    "screen-seen-sideways": "from the eye",
    "screen-too-near-or-far": "from the eye",
    "seat-turns-the-neck": "from the eye",
    "seat-dim-for-reading": "up to 5 ft (1520 mm)",
    "rug-misses-seats": "a share of 6 in (150 mm)",
    "art-too-small": "over a wall counted up to 96 in (2440 mm)",
    "art-too-wide": "over a wall counted up to 96 in (2440 mm)",
}
"""Rules whose very measure starts or ends at a figure of the trade that has a twin."""


def kept_in(survey: Survey, unit: str) -> Survey:
    """The same lengths, kept in another unit."""
    home = Household.model_validate({**dict(survey.household), "unit": unit})
    return rebuilt(survey, household=home)


def figures(survey: Survey) -> Figures:
    """Value, severity and certainty of every rule on every subject."""
    found: Figures = {}
    for judge in ALL:
        for subject in sorted(judge.rule.subjects(Look(survey, "r"))):
            one = judge_one(judge, Look(survey, "r"), subject, Brief())
            said = None if one is None else (one.value, float(one.severity), one.certain)
            found[f"{judge.rule.slug}/{subject}"] = said
    return found


def starts() -> list[Survey]:
    """The room of each rule's case file, at its start."""
    data = [read(path) for path in FILES]
    return [survey_of(changed(one["room"], one.get("start", {}))) for one in data]


@pytest.mark.parametrize("built", ROOMS, ids=lambda built: built.__name__)
@settings(max_examples=4, deadline=None, derandomize=True, phases=(Phase.explicit, Phase.generate))
@given(MOVES)
def test_with_one_band_for_both_nothing_differs(built: Callable[[], Survey], moves: list[tuple[int, int]]) -> None:
    """Were every twin exact, surveys in inches and in millimetres would have the same findings to the last digit."""
    survey = jumbled(built(), moves)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(Twin, "in_mm", lambda self, *_, **__: self.inches * MM_PER_INCH)
        assert figures(kept_in(survey, "in")) == figures(kept_in(survey, "mm"))


def test_with_one_band_no_rule_differs() -> None:
    """The same for the room of every rule's case file."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(Twin, "in_mm", lambda self, *_, **__: self.inches * MM_PER_INCH)
        for survey in starts():
            assert figures(kept_in(survey, "in")) == figures(kept_in(survey, "mm"))


def test_measured_values_are_the_same_in_both_units() -> None:
    """What the tape reads does not depend on its scale; the few rules that start at a printed figure are named."""
    tried: set[str] = set()
    for survey in (*starts(), *(built() for built in ROOMS)):
        inches, metric = figures(kept_in(survey, "in")), figures(kept_in(survey, "mm"))
        for name in sorted(set(inches) & set(metric)):
            one, other, slug = inches[name], metric[name], name.split("/")[0]
            if one is not None and other is not None:
                tried.add(slug)
                close = 0.02 * abs(one[0]) + 0.01 if slug in MEASURED_FROM_A_TWIN else 1e-6
                assert one[0] == pytest.approx(other[0], abs=close), name
    assert len(tried) == len(ALL), sorted({judge.rule.slug for judge in ALL} - tried)


def test_a_metric_survey_in_cm_is_judged_as_one_in_mm() -> None:
    """Centimetres are millimetres with another comma."""
    for built in ROOMS:
        assert figures(kept_in(built(), "cm")) == figures(kept_in(built(), "mm"))


def test_the_two_bands_are_the_same_length_to_a_fingers_breadth() -> None:
    """The twin is the only difference, and a small one: 10 mm at most at every edge of every rule."""
    for judge in ALL:
        for edge in (judge.band.low, judge.band.high, judge.band.bad_low, judge.band.bad_high):
            inches, metric = edge_mm(edge, False), edge_mm(edge, True)
            if inches is not None and metric is not None:
                assert abs(inches - metric) <= 10.0, judge.rule.slug


def typed_in(text: str, unit: str) -> str:
    """A survey file in inches as it would be typed in another unit: every length of every form, nothing else."""
    scale = {"mm": MM_PER_INCH, "cm": MM_PER_INCH / 10}[unit]
    yaml = YAML(typ="safe", pure=True)
    data = yaml.load(text)
    data["unit"] = unit
    for table in ("rooms", "walls", *TABLES):
        lengths = {column.field for column in FORM_OF[table] if column.kind == "length"}
        data[table] = [
            {name: round(value * scale, 6) if name in lengths else value for name, value in row.items()}
            for row in data.get(table, ())
        ]
    out = io.StringIO()
    yaml.dump(data, out)
    return out.getvalue()


@pytest.mark.parametrize("unit", ["mm", "cm"])
def test_typing_the_survey_in_another_unit_changes_nothing(unit: str, tmp_path: Path) -> None:
    """The stager's two rooms typed in millimetres or centimetres are the same survey but for what was not measured."""
    source = REPO / "catalog_demo" / "stager" / "survey.yaml"
    path = tmp_path / "survey.yaml"
    path.write_text(typed_in(source.read_text(encoding="utf-8"), unit), encoding="utf-8")
    inches, other = read_survey(source), read_survey(path)
    assert (inches.problems, other.problems) == ((), ())
    assert inches.survey is not None
    assert other.survey is not None
    assert other.survey.household.unit == unit
    assert other.survey.guessed == inches.survey.guessed
    lengths = [wall.length for wall in inches.survey.walls]
    assert [wall.length for wall in other.survey.walls] == pytest.approx(lengths, abs=1e-3)
    for table in TABLES:
        for mine, theirs in zip(inches.survey.table(table), other.survey.table(table), strict=True):
            for field, value in dict(mine).items():
                if (mine.name, field) not in inches.survey.guessed:
                    assert getattr(theirs, field) == pytest.approx(value, abs=1e-3), (mine.name, field)
