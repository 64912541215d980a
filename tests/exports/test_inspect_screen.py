from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from budgetfix.base.twin import Twin
from budgetfix.brief.models import ListedFault
from budgetfix.exports.inspect_screen import Inspection, inspect_text
from budgetfix.exports.lettering import columns_of
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.rule import Band
from tests.exports.sample_book import LONG, RTL

ROD = Finding(
    rule="a-sample-rule",
    title="Rod too narrow",
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
CASE = replace(ROD, title="Tall piece loose", subject="Bookcase", safety=True, points=500, unit="yes", note="loose")
DOUBT = replace(ROD, title="Screen too far", subject="TV", unit="ratio", value=2.6, certain=False, points=28)
SOUND = replace(ROD, subject="Small window", severity=Fraction(0), points=0)
SEEN = Inspection(
    title="Front room",
    room_words="14 ft by 12 ft",
    findings=(CASE, ROD, DOUBT, SOUND),
    listed=(ListedFault(fault="f1", points=100, what="the door sticks", where="door"),),
    points=503,
    hazards=1,
    rules=79,
    unit="in",
    job="front-room",
    notes=("survey.xlsx was read, survey.yaml was not.",),
)


def test_hazards_come_first_then_the_worst() -> None:
    """Safety above, then faults by points with the listed ones, and what to type next."""
    lines = inspect_text(SEEN).split("\n")
    order = ["SAFETY", "Tall piece loose", "LOOKS AND USE", "Rod too narrow", "Screen too far", "the door sticks"]
    at = [next(row for row, line in enumerate(lines) if words in line) for words in order]
    assert at == sorted(at)
    assert lines[0] == "Front room, 14 ft by 12 ft: 4 things judged by 79 rules."
    assert " ".join(lines[at[3]].split()) == "375 Rod too narrow Big window 2 in 8 in or more"
    assert "4 faults, 503 points, 1 hazard. 1 check found nothing wrong." in lines
    assert lines[-1].endswith("budgetfix plan front-room")
    assert "survey.xlsx was read, survey.yaml was not." in lines


def test_doubt_is_marked_and_explained() -> None:
    """A figure too close to call has a sign after it, and the sign a line; without doubt neither shows."""
    text = inspect_text(SEEN)
    doubtful = next(line for line in text.split("\n") if "Screen too far" in line)
    assert "2.60 ~ " in doubtful
    assert "\n~ too close to call" in text
    assert "~" not in inspect_text(replace(SEEN, findings=(ROD,)))


def test_a_sound_room_says_so() -> None:
    """Nothing off: one sentence, no empty tables, no rule to read about."""
    text = inspect_text(replace(SEEN, findings=(SOUND,), listed=(), points=0, hazards=0))
    assert "Nothing is off by these rules." in text
    assert "SAFETY" not in text
    assert "Why is" not in text


@pytest.mark.parametrize("name", [LONG, RTL * 4, "棚板" * 40])
@pytest.mark.parametrize("unicode", [True, False])
def test_no_line_runs_over_the_edge(name: str, unicode: bool) -> None:
    """79 columns for names in any script, cut with a mark; ASCII where nothing else shows."""
    listed = (ListedFault(fault="f1", points=99_999, what=name, where=name),)
    findings = tuple(replace(one, title=name, subject=name, note=name) for one in SEEN.findings)
    text = inspect_text(replace(SEEN, title=name, findings=findings, listed=listed), unicode=unicode)
    assert [line for line in text.split("\n") if columns_of(line) > 79] == []
    assert unicode or text.isascii()


def test_what_was_left_blank_and_matters_is_asked_for_before_what_to_type_next() -> None:
    """Wrapped like all else; a survey without such figures has no such heading."""
    words = "ceiling of the room: 8 ft was assumed; between 7 ft 6 in and 9 ft up to 80 points hang on it"
    lines = inspect_text(replace(SEEN, asked=(words,))).split("\n")
    at = lines.index("MEASURE THESE NEXT")
    assert " ".join(" ".join(lines[at + 1 : at + 3]).split()) == f"{words}."
    assert lines[at + 3] == ""
    assert "MEASURE THESE NEXT" not in inspect_text(SEEN)
    assert max(map(columns_of, lines)) <= 79
