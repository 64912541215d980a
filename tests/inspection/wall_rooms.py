"""The three invented rooms with what hangs and stands at their walls: screens, curtains, pictures.

Built from the rooms of `rooms.py`; figures in the rooms' own units (millimetres, or inches for the stager).
"""

from __future__ import annotations

from budgetfix.room.survey import Survey
from tests.inspection.rooms import COUPLE_LIVING, RENTER, STAGER_LIVING, TODDLER, Facts, room


def centred(name: str, wall: str, centre: tuple[float, float], size: tuple[float, float], **more: object) -> Facts:
    """Something on a wall by the middle of it: (from the left corner, above the floor)."""
    from_left, bottom = centre[0] - size[0] / 2, centre[1] - size[1] / 2
    spot = {"wall": wall, "from_left": from_left, "bottom": bottom}
    return {"name": name, **spot, "width": size[0], "height": size[1], **more}


def renter_walls() -> Survey:
    """A third-floor living room, in millimetres."""
    pictures = [
        centred("tv", "D", (1650.0, 816.0), (1107.0, 623.0), what="screen", on="console", feet=960.0),
        centred("art", "B", (2350.0, 1750.0), (500.0, 700.0), over="sofa", weight=2.4, fixing="nail"),
        centred("desk left", "A", (2755.0, 1180.0), (300.0, 400.0), over="desk"),
        centred("desk right", "A", (3145.0, 1155.0), (300.0, 400.0), over="desk"),
    ]
    return room("mm", (3600.0, 4500.0), {**RENTER, "pictures": pictures})


def stager_walls() -> Survey:
    """A living room before its photographs, in inches."""
    photos = [
        centred(f"photo {at}", "B", centre, (11.0, 14.0), over="sofa", group="family photos", personal=True)
        for at, centre in enumerate(((86.0, 68.0), (100.0, 68.75), (118.0, 67.5)), 1)
    ]
    tv = centred("tv", "D", (106.0, 72.0), (56.625, 31.875), what="screen", fixing="screws")
    curtains = [
        {"name": f"curtain {at}", "window": f"win-{at}", "rod_height": high, "rod_from_left": left, "rod_width": 38.0,
         "panel_width": 42.0, "hem": hem, "stack": 9.0}
        for at, (high, left, hem) in enumerate(((87.0, 27.0, 3.0), (90.0, 115.0, 6.0)), 1)
    ]  # fmt: skip
    return room("in", (180.0, 216.0), {**STAGER_LIVING, "pictures": [tv, *photos], "curtains": curtains})


def couple_walls() -> Survey:
    """A living-dining room with a toddler about, in millimetres."""
    frames = [
        centred(f"frame {at}", "B", centre, (400.0, 500.0), over="sideboard", group="frames")
        for at, centre in enumerate(((4595.0, 1550.0), (5055.0, 1565.0), (5605.0, 1540.0)), 1)
    ]
    tv = centred("tv", "A", (1300.0, 892.0), (1218.0, 685.0), what="screen", on="console", fixing="none")
    dining = {
        "name": "curtain-dining", "window": "win-dining", "rod_height": 2175.0, "rod_from_left": 400.0,
        "rod_width": 1400.0, "panel_width": 1400.0, "hem": 10.0, "stack": 210.0,
    }  # fmt: skip
    things = {**COUPLE_LIVING, "pictures": [tv, *frames], "curtains": [*COUPLE_LIVING["curtains"], dining]}
    return room("mm", (4100.0, 6200.0), things, **TODDLER)
