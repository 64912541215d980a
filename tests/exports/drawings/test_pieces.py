"""The parts of a drawing: letters and their width, spots for labels, lanes for dimensions, pictures of dots."""

from __future__ import annotations

import struct
from itertools import combinations

from hypothesis import given, settings
from hypothesis import strategies as st

from budgetfix.base.tape import write_length
from budgetfix.exports.drawings.floor import Floor, figure
from budgetfix.exports.drawings.hanging import draw_lamp
from budgetfix.exports.drawings.labels import Spot, Taken, beside, halves, inside, meet, within
from budgetfix.exports.drawings.lanes import LANES, Dim, Lanes
from budgetfix.exports.drawings.pen import STAYS, Pen, number, wide
from budgetfix.exports.drawings.picture import Picture
from budgetfix.exports.drawings.raster import SHARP, png
from budgetfix.exports.drawings.sheet import Keys, letter, shortened
from budgetfix.exports.drawings.standing import draw_light
from budgetfix.exports.drawings.wall import Face
from budgetfix.room.items import Light
from tests.exports.drawings.reading_svg import parsed, texts
from tests.inspection.rooms import room

DEN = room("mm", (3600, 4500), {"ceiling": 2500.0})


def picture(words: str) -> Picture:
    """A picture that holds nothing but a text."""
    pen = Pen("t")
    pen.text(60, 20, words)
    return Picture("", "floor", "after", "t", pen.svg(120, 40, "t", "w"), "w", 120, 40)


def size(data: bytes) -> tuple[int, int]:
    """Width and height of a PNG, from its header (PNG specification, section 11.2.1)."""
    assert data[:8] == b"\x89PNG\r\n\x1a\n"
    wide_, high = struct.unpack(">II", data[16:24])
    return (wide_, high)


def test_a_raster_is_crisp_and_the_same_twice() -> None:
    """Three dots a unit, so print stays sharp; two runs give the same bytes."""
    assert size(png(picture("sofa"))) == (round(120 * SHARP), round(40 * SHARP))
    assert png(picture("sofa")) == png(picture("sofa"))


def test_letters_of_many_tongues_are_drawn() -> None:
    """Accents, Hebrew, Arabic, Greek and Cyrillic come out as letters of their own, not as nothing or one same box."""
    shapes = {
        png(picture(words))
        for words in (
            "",
            "\u00e9\u00fc",
            "\u05e1\u05e4\u05d4",
            "\u0643\u0646\u0628\u0629",
            "\u03b1\u03b2",
            "\u0434\u0438",
        )
    }
    assert len(shapes) == 6


def test_hostile_names_stay_text() -> None:
    """What looks like markup is written as words."""
    svg = picture('<script>alert("x")</script> & co').svg
    assert texts(svg) == ['<script>alert("x")</script> & co']
    assert "<script" not in svg


def test_coordinates_are_short() -> None:
    """A tenth of a unit is enough; no minus zero."""
    assert [number(value) for value in (1.0, 1.25, -0.01, 10.96)] == ["1", "1.2", "0", "11"]


def test_broad_letters_count_more() -> None:
    """An m is wider than an l, a wide letter takes a whole height, a combining mark nothing."""
    assert wide("m") > wide("l")
    assert wide("\u5bb6") > wide("m")
    assert wide("e\u0301") == wide("e")


@settings(deadline=None, derandomize=True)
@given(st.lists(st.tuples(st.floats(10, 90), st.floats(10, 90)), max_size=25))
def test_what_is_taken_never_meets(spots: list[tuple[float, float]]) -> None:
    """However many labels ask, those that are placed share no ground and stay in the frame."""
    taken = Taken((0, 0, 100, 100))
    for x, y in spots:
        taken.first([Spot(x, y, ("word",)), *beside((x - 5, y - 5, x + 5, y + 5), "word", 8)])
    assert all(inside(box, taken.frame) for box in taken.boxes)
    assert not any(meet(one, other, 0) for one, other in combinations(taken.boxes, 2))


def test_names_break_in_the_middle() -> None:
    """Two lines of about the same length; one word stays whole."""
    assert halves("picture over the sofa") == ("picture", "over the sofa") or len(halves("picture over the sofa")) == 2
    assert halves("sofa") == ("sofa",)
    assert all(inside(spot.box, (0, 0, 60, 40)) for spot in within((0, 0, 60, 40), "coffee table", 8))


@settings(deadline=None, derandomize=True)
@given(st.lists(st.tuples(st.floats(50, 300), st.floats(50, 300)), max_size=12))
def test_dimensions_of_one_side_never_lie_on_each_other(spans: list[tuple[float, float]]) -> None:
    """Each lane holds only stretches that are apart, words included; what finds no lane is refused."""
    lanes = Lanes((46, 46, 314, 314), (2, 2, 358, 358))
    for start, end in spans:
        lanes.add(Dim("bottom", start, end, "1210"))
    for lane in range(LANES):
        reaches = [dim.reach(2, 358) for dim, at in lanes.placed if at == lane]
        assert all(a[1] <= b[0] or b[1] <= a[0] for a, b in combinations(reaches, 2))


def test_a_short_dimension_has_its_words_beside_it() -> None:
    """Words wider than their line stand behind its end, or before its start at the edge of the picture."""
    behind = Dim("bottom", 100, 104, "1210").reach(2, 358)
    before = Dim("bottom", 350, 354, "1210").reach(2, 358)
    assert behind[2] > 104
    assert before[2] < 350
    assert Dim("bottom", 100, 200, "1210").reach(2, 358) == (100, 200, 150)


def test_a_dimension_is_broken_where_its_words_stand() -> None:
    """The line has a gap for the figure, so it never crosses it."""
    lanes, pen = Lanes((46, 46, 314, 314), (2, 2, 358, 358)), Pen("d")
    lanes.add(Dim("bottom", 100, 200, "61 3/4"))
    lanes.draw(pen)
    root = parsed(pen.svg(360, 360, "", ""))
    level = [node.attrib for node in root if node.tag.endswith("line") and node.attrib["y1"] == node.attrib["y2"]]
    assert len(level) == 2
    assert float(level[0]["x2"]) < 150 < float(level[1]["x1"])


def test_the_floor_is_seen_with_wall_a_at_the_top_and_b_at_the_right() -> None:
    """Someone who faces A and turns right meets B on the right of the paper."""
    floor = Floor.of(DEN, "r")
    x0, y0, x1, y1 = floor.box(0, 0, 3600, 4500)
    assert floor.at((0, 0)) == (x1, y0)
    assert floor.at(floor.lines["A"].point(0)) == (x0, y0)
    assert floor.at(floor.lines["B"].point(0)) == (x1, y0)
    assert (x1 - x0) / (y1 - y0) == 3600 / 4500 or abs((x1 - x0) / (y1 - y0) - 0.8) < 1e-9


def test_a_wall_is_seen_from_its_left_corner_up_from_its_floor() -> None:
    """A point 1,000 from the left and 2,000 up is right of the corner and above the floor, at one scale."""
    face = Face.of(DEN, "r", "B")
    x0, y0, x1, y1 = face.box(1000, 0, 2000, 2000)
    assert abs(x0 - face.left - 1000 * face.scale) < 1e-9
    assert y1 == face.floor
    assert abs((y1 - y0) - 2 * (x1 - x0)) < 1e-9


def test_figures_have_no_unit() -> None:
    """The legend names the unit once; figures are what the tape says."""
    assert figure(1210.0, "mm") == "1210"
    assert figure(1568.45, "in") == write_length(1568.45, "in").removesuffix(" in") == "61 3/4"


def test_letters_go_on_after_z() -> None:
    """A house full of things never runs out of letters; a thing keeps its letter."""
    assert [letter(at) for at in (0, 25, 26, 27, 52)] == ["a", "z", "aa", "ab", "ba"]
    keys = Keys()
    assert (keys.of("sofa"), keys.of("desk"), keys.of("sofa")) == ("a", "b", "a")


def test_long_legends_are_cut_with_a_sign() -> None:
    """A name of any length stays inside the picture."""
    text = shortened("a  " + "walnut " * 30, 344, 8.5)
    assert text.endswith("\u2026")
    assert wide(text, 8.5) <= 344


def test_lamps_stand_on_what_carries_them() -> None:
    """A floor lamp's stem goes down to its foot; a wall light has none."""
    lamp = Light(name="l", what="floor lamp", width=300.0)
    standing, hanging = Pen("a"), Pen("b")
    draw_lamp(standing, lamp, (10, 10, 40, 30), STAYS, 100)
    draw_lamp(hanging, Light(name="w", what="wall light"), (10, 10, 40, 30), STAYS, 100)
    lines = [sum(node.tag.endswith("line") for node in parsed(pen.svg(50, 120, "", ""))) for pen in (standing, hanging)]
    assert lines == [2, 0]
    seen = Pen("c")
    draw_light(seen, (0, 0, 20, 20), replace_light(lamp), marked=True)
    assert "circle" in seen.svg(20, 20, "", "")


def replace_light(lamp: Light) -> Light:
    """The same lamp at the ceiling."""
    return Light.model_validate({**dict(lamp), "what": "ceiling"})
