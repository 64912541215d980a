"""Drawings of the three demo plans: complete, at one scale, true to the survey, and told in words as well."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from itertools import combinations

from budgetfix.base.tape import write_length
from budgetfix.exports.drawings.draw import pictures
from budgetfix.exports.drawings.picture import Picture
from budgetfix.outcome.book import Drawn, Mark
from budgetfix.room.items import Curtain, Hung
from budgetfix.room.survey import Survey
from tests.exports.drawings.reading_svg import ids, marks, overlap, parsed, texts, view, words
from tests.exports.sample_book import BOOK
from tests.inspection.rooms import room
from tests.scenarios import EACH, RENTER, run


@cache
def drawn(name: str) -> tuple[Picture, ...]:
    """The drawings of a demo plan."""
    return pictures(run(name).book)


def of(name: str, view_: str, when: str) -> Picture:
    """One picture of the first room that has it."""
    return next(one for one in drawn(name) if (one.view, one.when) == (view_, when))


@EACH
def test_each_changed_room_and_wall_is_drawn_before_and_after_at_one_scale(name: str) -> None:
    """Pictures come in pairs of one size; each pair has both, and every room that changes is seen from above."""
    found = drawn(name)
    pairs = [(one.room, one.view) for one in found if one.when == "before"]
    assert pairs == [(one.room, one.view) for one in found if one.when == "after"]
    assert len(set(pairs)) == len(pairs)
    for before, after in zip(found[::2], found[1::2], strict=True):
        assert (before.width, before.height) == (after.width, after.height)
        assert view(before.svg) == view(after.svg)
        assert _walls(before) == _walls(after)
    assert {room for room, view in pairs if view == "floor"} == {room for room, _ in pairs}


def _walls(picture: Picture) -> list[str]:
    """The outline of the room or wall: the first marks of a picture."""
    return [node.attrib.get("d", node.attrib.get("width", "")) for node in list(parsed(picture.svg))[4:5]]


@EACH
def test_every_thing_that_changes_is_hatched_or_heavy_and_has_its_task(name: str) -> None:
    """Colour is never needed: what changes is hatched or has a heavy line, and the number of its task is there."""
    book = run(name).book
    assert book.drawn is not None
    for one in drawn(name):
        if one.when == "after" and one.notes:
            numbers = {str(number) for number, _ in one.notes}
            assert numbers <= set(texts(one.svg))
            assert marks(one.svg, "fill", "-changed)") + marks(one.svg, "stroke-width", "2") >= 1
            for number, task in one.notes:
                assert book.tasks[number - 1].name == task


@EACH
def test_every_mark_of_the_plan_is_seen_and_told(name: str) -> None:
    """Each thing that the plan changes is in the words of a picture of before and one of after."""
    book = run(name).book
    assert book.drawn is not None
    for when in ("before", "after"):
        told = " ".join(one.words for one in drawn(name) if one.when == when)
        for mark in book.drawn.marks:
            assert mark.item in told


@RENTER
def test_dimensions_say_what_the_tape_said_and_what_it_will_say() -> None:
    """The renter's rod: 2160 mm up and 950 mm from the corner before, as chosen after, both in their picture."""
    book = run("renter").book
    assert book.drawn is not None
    before = texts(of("renter", "wall C", "before").svg)
    assert {"2160", "950", "1500"} <= set(before)
    rod = book.drawn.after.named["curtain"][1]
    assert isinstance(rod, Curtain)
    after = set(texts(of("renter", "wall C", "after").svg))
    for length in (rod.rod_height, rod.rod_from_left, rod.rod_width):
        assert write_length(length, "mm").removesuffix(" mm") in after


@RENTER
def test_what_hangs_is_drawn_where_it_hangs() -> None:
    """The screen's lower edge stands as high over the floor line as its height at the picture's scale."""
    picture = of("renter", "wall D", "before")
    survey = run("renter").job.survey
    assert survey is not None
    screen = survey.named["screen"][1]
    assert isinstance(screen, Hung)
    rects = [node.attrib for node in parsed(picture.svg) if node.tag.endswith("rect")][1:]
    wall = rects[0]
    scale = float(wall["width"]) / 4500
    floor = float(wall["y"]) + float(wall["height"])
    tops = [round((floor - float(one["y"])) / scale) for one in rects]
    assert any(abs(top - (screen.bottom + screen.height)) < 10 for top in tops)


@EACH
def test_labels_collide_with_nothing_and_stay_inside(name: str) -> None:
    """No two texts share ground, and none leaves the picture, also where many things stand close together."""
    for one in drawn(name):
        frame, found = view(one.svg), words(one.svg)
        for word in found:
            assert word.box[0] >= frame[0] - 0.5, (one.title, word)
            assert word.box[1] >= frame[1] - 0.5, (one.title, word)
            assert word.box[2] <= frame[2] + 0.5, (one.title, word)
            assert word.box[3] <= frame[3] + 0.5, (one.title, word)
        for first, second in combinations(found, 2):
            assert overlap(first.box, second.box) < 2.0, (one.title, first, second)


@EACH
def test_a_page_may_hold_all_of_them(name: str) -> None:
    """Attributes only (no style, no script, nothing fetched), ids that never meet, titles and words inside."""
    found = drawn(name)
    every = [id for one in found for id in ids(one.svg)]
    assert len(every) == len(set(every))
    for one in found:
        assert "style" not in one.svg
        assert "<script" not in one.svg
        assert "href" not in one.svg
        root = parsed(one.svg)
        labels = root.attrib["aria-labelledby"].split()
        by_id = {node.attrib["id"]: node.text for node in root.iter() if "id" in node.attrib}
        assert [by_id[label] for label in labels] == [one.title, one.words]


@RENTER
def test_same_plan_same_pictures() -> None:
    """Drawn twice, the same letters."""
    book = run("renter").book
    assert pictures(book) == pictures(book)


def test_listed_faults_have_no_drawings() -> None:
    """Without a survey there is nothing to draw."""
    assert pictures(replace(BOOK, drawn=None)) == ()


LONG = "the long low sideboard of oiled walnut that came from a house by the sea"
HEBREW = "\u05d4\u05e1\u05e4\u05d4 \u05e9\u05dc \u05e1\u05d1\u05ea\u05d0"


def crowded() -> Survey:
    """A small room full of things with long, accented and right-to-left names."""
    names = (LONG, HEBREW, "b\u00fbche \u00e0 f\u00eater", '<b>&"quoted"</b>', "a", "\u5bb6\u5177")
    pieces = [
        {"name": name, "what": "cabinet", "plan": (300 * at, 200, 250, 250), "height": 700.0, "faces": "C"}
        for at, name in enumerate(names)
    ]
    hung = [
        {"name": f"{name} hung", "what": "picture", "wall": "A", "from_left": 100.0 + 280 * at, "width": 200.0,
         "height": 200.0, "bottom": 1500.0}
        for at, name in enumerate(names)
    ]  # fmt: skip
    return room("mm", (2000, 2600), {"ceiling": 2400.0, "furniture": pieces, "pictures": hung})


def test_any_names_fit() -> None:
    """Long, accented, right-to-left and hostile names stay inside, collide with nothing, and stay text."""
    survey = crowded()
    book = replace(BOOK, drawn=Drawn(survey, _lowered(survey), tuple(Mark(one.name, (1,)) for one in survey.pictures)))
    for one in pictures(book):
        frame, found = view(one.svg), words(one.svg)
        assert all(word.box[0] >= frame[0] and word.box[2] <= frame[2] for word in found)
        assert all(overlap(a.box, b.box) < 2.0 for a, b in combinations(found, 2)), one.title
        assert "<b>" not in one.svg


def _lowered(survey: Survey) -> Survey:
    lower = [Hung.model_validate({**dict(one), "bottom": one.bottom - 300}) for one in survey.pictures]
    return Survey.model_validate({**{name: getattr(survey, name) for name in type(survey).model_fields},
                                  "pictures": tuple(lower)})  # fmt: skip
