"""A survey typed as YAML."""

from __future__ import annotations

from pathlib import Path

import pytest

from budgetfix.intake.survey_file import SurveyFile, read_survey

FRONT_ROOM = Path(__file__).parent / "rooms" / "front-room.yaml"


def _with(tmp_path: Path, *swaps: tuple[str, str]) -> SurveyFile:
    """The front room with some words swapped."""
    text = FRONT_ROOM.read_text(encoding="utf-8")
    for old, new in swaps:
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    path = tmp_path / "survey.yaml"
    path.write_text(text, encoding="utf-8")
    return read_survey(path)


def _lines(file: SurveyFile) -> list[str]:
    return [str(problem) for problem in file.problems]


def test_the_front_room_is_read() -> None:
    """Lengths are millimetres, names find each other, and what was not measured is marked as guessed."""
    file = read_survey(FRONT_ROOM)
    assert file.problems == ()
    assert file.survey is not None
    survey = file.survey
    assert [wall.length for wall in survey.walls] == [4267.2, 3657.6, 4267.2, 3657.6]
    assert survey.household.before_1978 is None
    assert survey.curtains[0].window == "Big window"
    assert survey.curtains[0].name == "big window curtains"
    assert survey.openings[1].top == pytest.approx(82.5 * 25.4)
    tv = survey.pictures[0]
    assert (tv.width, tv.height) == pytest.approx((47.937 * 25.4, 26.964 * 25.4))
    assert survey.lights[1].wall == "D"
    assert survey.guessed == {
        ("Armchair", "seat"),
        ("Armchair", "arm"),
        ("Sofa", "arm"),
        ("Console", "height"),
        ("Desk lamp", "lumens"),
        ("Desk lamp", "kelvin"),
        ("Desk lamp", "lead"),
        ("Desk lamp", "from_left"),
        ("Desk lamp", "gap"),
    }
    assert {name: value for name, (value, _) in file.brief_fields.items()} == {
        "currency": "USD",
        "budget": 150,
        "hours": [3, 2],
        "people": 2,
        "holes": 12,
    }
    assert [(fault.fault, fault.points, fault.safety) for fault in file.faults] == [
        ("holes", 120, False),
        ("cord", 80, True),
    ]
    assert str(file.places[("Sofa", "width")]) == "front-room.yaml [line 17]"


def test_ten_planted_mistakes(tmp_path: Path) -> None:
    """Ten mistakes give ten problems, each with its line, word for word."""
    file = _with(
        tmp_path,
        ("hinge: right", "hinge: middle"),
        ("window: big window", "window: big windw"),
        ("hem: 2 3/4", "hem: 11/2"),
        ("width: 84, depth: 36, height: 33", "width: 84, depth: 36, height: '33,5'"),
        ("width: 32, height: 34", "width: 188, height: 34"),
        ("from_left: 60, width: 48, depth: 16", "from_left: 60, width: 4O, depth: 16"),
        ("wall: D, from_left: 20", "wall: E, from_left: 20"),
        ("diagonal: 55", "diagonal: 0"),
        ("bottom: 57", "bottom: 80"),
        ("name: Rug", "name: Sofa"),
    )
    assert file.survey is None
    length = "a length such as 6' 2 1/2\", 74.5 or 188 cm"
    assert _lines(file) == [
        "survey.yaml [line 12] found 'middle', wanted one of: left, right",
        "survey.yaml [line 15] found 'big windw', wanted a name from openings: Front door, Big window; "
        "did you mean Big window?",
        f"survey.yaml [line 15] found '11/2', wanted {length}; 11/2 is more than a whole one; did you mean 1 1/2?",
        f"survey.yaml [line 17] found '33,5', wanted {length} above 0; write a point, not a comma: 33.5",
        "survey.yaml [line 18] found 188 in for 'Armchair', wanted at most wall D's 144 in; did you mean 188 cm?",
        f"survey.yaml [line 20] found '4O', wanted {length} above 0",
        "survey.yaml [line 21] found 'E', wanted a wall of this room: A, B, C, D",
        f"survey.yaml [line 25] found 0, wanted {length} above 0",
        "survey.yaml [line 26] found the top of 'Harbour print' at 104 in, wanted at most the ceiling's 96 in",
        "survey.yaml [line 28] found 'Sofa' again, wanted a name used once (also at line 17)",
    ]


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("unit: in\n", "", "line 1] found nothing, wanted the unit of bare numbers: in, cm or mm"),
        ("depth: 16}", "deep: 16}", "found the key 'deep', wanted one of:"),
        ("  - {wall: C}", "  - {wall: C, length: 160}", "found walls that do not close by 8 in"),
        ("  - {wall: B, length: 12 ft", "  - {wall: B", "found nothing, wanted a length (only the last"),
        ("  - {wall: D}\n", "", "found walls that miss their start by 144 in"),
        (
            "wall: A, length: 14 ft",
            "wall: A, turn: left, length: 14 ft",
            "found nothing, wanted a length (only the last",
        ),
        ("  - {wall: C}", "  - {wall: B}", "found wall 'B' again"),
        ("from_left: 68, gap: 58", "from_left: 68, gap: 30", "on the same spot of floor as 'Sofa'"),
        ("from_left: 68, gap: 58", "from_left: 68, gap: 130", "reaching out of the room"),
        ("from_left: 46, width: 84", "from_left: 100, width: 84", "'Sofa' ending 184 in from the left corner"),
        ("rod_height: 85", "rod_height: 100", "found 100 in for 'big window curtains', wanted at most the ceiling's"),
        ("width: 5 ft, bottom", "width: 13 ft, bottom", "found 156 in for 'Big window', wanted at most wall B's 144"),
        ("bottom: 30, top", "bottom: 90, top", "found 82 1/2 in over 90 in, wanted a top above the sill"),
        ("name: Sofa, what: sofa,", "name: Sofa,", "found nothing, wanted what, in words; add `what:`"),
        ("over: sofa", "over: Settee", "found 'Settee', wanted a name from furniture"),
        ("{wall: D, from_left: 40}", "{wall: D, from_left: 40, room: Attic}", "found 'Attic', wanted a room"),
        ("points: 80", "points: many", "found 'many', wanted a whole number, 0 or more"),
        ("{fault: cord", "{fault: holes", "found 'holes' again, wanted a name used once"),
        ("wall: C}\n  - {wall: D}", "wall: C, length: 14 ft}\n  - {wall: D, turn: left}", "turns that add up to 180°"),
        ("width: 20, height: 24", "width: 20, diagonal: 9, height: 24", "wanted a diagonal of screens only"),
    ],
)
def test_one_mistake_one_problem(tmp_path: Path, old: str, new: str, told: str) -> None:
    """Each contradiction is told once, at its line, and nothing else is blamed for it."""
    file = _with(tmp_path, (old, new))
    assert file.survey is None
    found = [line for line in _lines(file) if told in line]
    assert len(found) == 1, _lines(file)
    assert len(file.problems) == (2 if "deep" in new else 1), _lines(file)


def test_no_walls_is_one_problem(tmp_path: Path) -> None:
    """A survey without walls is told once, not once for each thing."""
    text = FRONT_ROOM.read_text(encoding="utf-8")
    path = tmp_path / "survey.yaml"
    path.write_text("".join(line for line in text.splitlines(True) if "{wall: " not in line or "from_left" in line))
    told = _lines(read_survey(path))
    assert told == ["survey.yaml [line 8] found wall 'A', wanted the walls listed under walls"]


def test_only_faults(tmp_path: Path) -> None:
    """A survey may hold nothing but what bothers people."""
    path = tmp_path / "survey.yaml"
    path.write_text("unit: cm\nfaults: [{fault: f1, points: 5}]\n", encoding="utf-8")
    file = read_survey(path)
    assert file.problems == ()
    assert file.survey is not None
    assert file.survey.rooms == ()
    assert file.faults[0].fault == "f1"


def test_a_file_that_is_no_yaml_is_one_problem(tmp_path: Path) -> None:
    """What cannot be read at all is told once: nothing else is missing for it."""
    path = tmp_path / "survey.yaml"
    path.write_bytes(b"unit: cm\nwalls: [\n")
    assert len(read_survey(path).problems) == 1


def test_a_mat_belongs_to_its_door(tmp_path: Path) -> None:
    """A rug belongs to a table, a bed, or the door at which it lies; a name that is none of them is told."""
    text = (
        "unit: cm\nwalls: [{wall: A, length: 400}, {wall: B, length: 500}]\n"
        "openings: [{name: front door, what: door, wall: A, from_left: 50, width: 90}]\n"
        "rugs: [{name: mat, wall: A, from_left: 60, width: 70, depth: 45, gap: 10, under: front door}]\n"
    )
    path = tmp_path / "survey.yaml"
    path.write_text(text, encoding="utf-8")
    file = read_survey(path)
    assert file.problems == ()
    assert file.survey is not None
    assert file.survey.rugs[0].under == "front door"
    path.write_text(text.replace("under: front door", "under: back door"), encoding="utf-8")
    assert _lines(read_survey(path)) == [
        "survey.yaml [line 4] found 'back door', wanted a name from furniture or openings: front door"
    ]
