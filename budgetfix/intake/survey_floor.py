"""Two things on one spot of floor, and things that stand outside of the room."""

from __future__ import annotations

from shapely.geometry import Polygon

from budgetfix.base.tape import write_length
from budgetfix.intake.survey_build import Line, Reading
from budgetfix.room.items import Piece, Rug
from budgetfix.room.places import footprint, middle, outline, wall_lines
from budgetfix.room.survey import Survey

GIVE_MM = 5.0
STACKED = ("nesting tables", "basket", "plant", "toy box", "cushion", "box", "tray", "pouf", "corner sofa")
"""What may stand under, on or in the arms of other things (a corner sofa's square holds its own table)."""


def check_floor(reading: Reading, survey: Survey) -> None:
    """Tell every piece that overlaps an earlier one by more than 5 mm, or leaves its room."""
    lines = {line.name: line for line in reading.sound("furniture", "rugs")}
    for facts in survey.rooms:
        if facts.room in reading.bad_rooms or not survey.walls_of(facts.room):
            continue
        pieces = [piece for piece in survey.furniture if piece.room == facts.room and piece.name in lines]
        rugs = [rug for rug in survey.rugs if rug.room == facts.room and rug.name in lines]
        things: list[Piece | Rug] = [*pieces, *rugs]
        for thing in things:
            _inside(reading, survey, thing, lines[thing.name])
        _apart(reading, survey, [piece for piece in pieces if not lines[piece.name].broken], lines)


def _spot(survey: Survey, thing: Piece | Rug) -> Polygon:
    """The floor that a thing covers, less the tape's give; round things as discs."""
    lines = wall_lines(survey, thing.room)
    whole = footprint(thing, lines)
    if thing.round and abs(thing.width - thing.depth) <= 2 * GIVE_MM:
        from shapely.geometry import Point

        whole = Point(*middle(thing, lines)).buffer(thing.width / 2)
    return whole.buffer(-GIVE_MM, join_style="mitre")


def _inside(reading: Reading, survey: Survey, thing: Piece | Rug, line: Line) -> None:
    beyond = _spot(survey, thing).difference(outline(survey, thing.room))
    if beyond.area > 1.0:
        field = "gap" if thing.gap + min(thing.depth, thing.width) > 0 and "gap" in line.row.cells else "depth"
        end = write_length(thing.gap + thing.depth, reading.unit)
        reading.refuse(line, field, f"'{thing.name}' reaching out of the room ({end} from its wall)",
                       "a place inside the room")  # fmt: skip


def _apart(reading: Reading, survey: Survey, pieces: list[Piece], lines: dict[str, Line]) -> None:
    spots = [(piece, _spot(survey, piece)) for piece in pieces]
    for later, (piece, spot) in enumerate(spots):
        for other, other_spot in spots[:later]:
            if not _may_share(piece, other) and spot.intersects(other_spot):
                common = spot.intersection(other_spot).area
                if common > 1.0:
                    found = f"'{piece.name}' on the same spot of floor as '{other.name}'"
                    todo = f"measure both again (at {lines[other.name].row.place.label})"
                    reading.refuse(lines[piece.name], "from_left", found, "one thing on one spot", todo)
                    break


def _may_share(one: Piece, other: Piece) -> bool:
    if one.hangs or other.hangs or one.what in STACKED or other.what in STACKED:
        return True
    return one.at == other.name or other.at == one.name or (one.tucked or other.tucked)
