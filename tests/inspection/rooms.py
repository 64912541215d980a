"""Small rooms for tests, written as on a plan: (x, y, size in x, size in y) from the corner of walls A and B.

`room` turns plan figures into a survey as a tape would have measured it. The rooms of a renter, a stager and a couple
are invented; every fault in them was put there on purpose.
"""

from __future__ import annotations

from typing import Any

from budgetfix.room.items import Curtain, Hung, Light, Opening, Piece, Rug
from budgetfix.room.survey import Household, RoomFacts, Survey, Wall

INCH = 25.4
OPPOSITE = {"A": "C", "B": "D", "C": "A", "D": "B"}
Plan = tuple[float, float, float, float]
Facts = dict[str, Any]


def placed(plan: Plan, wall: str, size: tuple[float, float]) -> Facts:
    """`from_left`, `gap`, `width` along the wall and `depth` off it, of a rectangle on the plan."""
    (x, y, dx, dy), (wide, long) = plan, size
    from_left = {"A": wide - x - dx, "B": y, "C": x, "D": long - y - dy}[wall]
    gap = {"A": y, "B": x, "C": long - y - dy, "D": wide - x - dx}[wall]
    along, off = (dx, dy) if wall in "AC" else (dy, dx)
    return {"wall": wall, "from_left": from_left, "gap": gap, "width": along, "depth": off}


def room(unit: str, size: tuple[float, float], things: Facts, **home: Any) -> Survey:
    """One room. Figures are in the unit's own terms (inches or millimetres) and stored in millimetres."""
    scale = INCH if unit == "in" else 1.0
    width, length = (side * scale for side in size)
    facts = {"room": "r", "ceiling": things["ceiling"] * scale, **things.get("facts", {})}
    sizes = dict(zip("ABCD", (width, length, width, length), strict=True))

    def mm(fields: Facts, *lengths: str) -> Facts:
        return {key: value * scale if key in lengths else value for key, value in fields.items()}

    def spot(fields: Facts, wall: str) -> Facts:
        plan = tuple(at * scale for at in fields["plan"])
        rest = {key: value for key, value in fields.items() if key != "plan"}
        return {**placed(plan, wall, (width, length)), **rest}

    lengths = ("from_left", "width", "bottom", "top", "height", "seat", "lead", "cord", "depth", "gap")
    cloth = ("rod_height", "rod_from_left", "rod_width", "panel_width", "hem", "stack")
    pieces = [
        Piece.model_validate(spot(mm({"room": "r", **one}, *lengths), OPPOSITE.get(one.get("faces", ""), "A")))
        for one in things.get("furniture", ())
    ]
    return Survey(
        household=Household.model_validate({"unit": unit, **home}),
        rooms=(RoomFacts.model_validate(facts),),
        walls=tuple(Wall(room="r", wall=letter, length=side) for letter, side in sizes.items()),
        openings=tuple(
            Opening.model_validate(mm({"room": "r", **one}, *lengths)) for one in things.get("openings", ())
        ),
        curtains=tuple(Curtain.model_validate(mm({"room": "r", **one}, *cloth)) for one in things.get("curtains", ())),
        furniture=tuple(pieces),
        pictures=tuple(Hung.model_validate(mm({"room": "r", **one}, *lengths)) for one in things.get("pictures", ())),
        rugs=tuple(Rug.model_validate(spot({"room": "r", **one}, "A")) for one in things.get("rugs", ())),
        lights=tuple(
            Light.model_validate(spot(mm({"room": "r", **one}, *lengths), "A")) for one in things.get("lights", ())
        ),
    )


def seen(survey: Survey, name: str, **new: Any) -> Survey:
    """The survey with some figures (millimetres) of one thing changed."""
    table, item = survey.named[name]
    fresh = type(item).model_validate({**dict(item), **new})
    things = tuple(fresh if one.name == name else one for one in survey.table(table))
    return survey.model_copy(update={table: things})


RENTER: Facts = {
    "ceiling": 2500.0,
    "openings": [
        {"name": "door-hall", "wall": "A", "from_left": 250.0, "width": 800.0},
        {"name": "door-kitchen", "wall": "B", "from_left": 3600.0, "width": 750.0, "opens": "out"},
        {"name": "win", "what": "window", "wall": "C", "from_left": 1000.0, "width": 1400.0, "bottom": 900.0,
         "top": 2100.0},
    ],
    "furniture": [
        {"name": "sofa", "what": "sofa", "plan": (0, 1300, 880, 2100), "height": 800.0, "faces": "D", "seat": 430.0},
        {"name": "armchair", "what": "armchair", "plan": (2600, 3550, 750, 750), "height": 820.0,
         "faces": "A", "reading": True},
        {"name": "table", "what": "coffee table", "plan": (1480, 2050, 500, 600), "height": 450.0},
        {"name": "console", "what": "screen bench", "plan": (3200, 2350, 400, 1000), "height": 450.0, "faces": "B"},
        {"name": "bookcase", "what": "bookcase", "plan": (1600, 0, 800, 280), "height": 2020.0, "faces": "C"},
        {"name": "shoes", "what": "shoe cabinet", "plan": (3220, 350, 380, 600), "height": 600.0, "faces": "B"},
        {"name": "desk", "what": "desk", "plan": (150, 0, 1000, 500), "height": 740.0, "faces": "C"},
        {"name": "deskchair", "what": "desk chair", "plan": (430, 500, 440, 200), "height": 850.0,
         "at": "desk", "tucked": True},
        {"name": "radiator", "what": "radiator", "plan": (1100, 4380, 1200, 120), "height": 600.0, "faces": "A"},
        {"name": "fan heater", "what": "portable heater", "plan": (2950, 4300, 150, 100), "height": 300.0,
         "faces": "A"},
    ],
    "rugs": [{"name": "rug", "plan": (1000, 1750, 1700, 1200)}],
    "curtains": [
        {
            "name": "curtain", "window": "win", "rod_height": 2160.0, "rod_from_left": 950.0, "rod_width": 1500.0,
            "panel_width": 1100.0, "hem": 70.0, "stack": 220.0,
        },
    ],
    "lights": [{"name": "ceiling", "what": "ceiling", "plan": (1800, 2250, 0, 0), "lumens": 1000.0,
     "kelvin": 4000.0}],
}  # fmt: skip

STAGER_LIVING: Facts = {
    "ceiling": 102.0,
    "openings": [
        {"name": "front-door", "wall": "A", "from_left": 6.0, "width": 36.0},
        {"name": "opening-hall", "what": "opening", "wall": "B", "from_left": 168.0, "width": 36.0,
         "opens": "no leaf"},
        {"name": "win-1", "what": "window", "wall": "C", "from_left": 28.0, "width": 36.0, "bottom": 24.0,
         "top": 84.0},
        {"name": "win-2", "what": "window", "wall": "C", "from_left": 116.0, "width": 36.0, "bottom": 24.0,
         "top": 84.0},
    ],
    "furniture": [
        {"name": "sofa", "what": "sofa", "plan": (2, 60, 36, 84), "height": 34.0, "faces": "D", "seat": 18.0},
        {"name": "chair-1", "what": "armchair", "plan": (146, 40, 32, 30), "height": 33.0, "faces": "B"},
        {"name": "chair-2", "what": "armchair", "plan": (146, 158, 32, 30), "height": 33.0, "faces": "B"},
        {"name": "table", "what": "coffee table", "plan": (68, 84, 20, 36), "height": 18.0},
        {"name": "fireplace", "what": "fireplace", "plan": (172, 78, 8, 64), "height": 52.0, "faces": "B"},
        {"name": "cabinet", "what": "cabinet", "plan": (64, 0, 44, 16), "height": 72.0, "faces": "C"},
        {"name": "lampf", "what": "floor lamp", "plan": (4, 148, 12, 12), "height": 60.0},
    ],
    "rugs": [{"name": "rug", "plan": (62, 54, 60, 96), "pad": True}],
    "pictures": [
        {"name": f"photo-{at}", "wall": "B", "from_left": left, "width": 11.0, "height": 14.0, "bottom": 61.0,
         "personal": True}
        for at, left in enumerate((80.5, 94.5, 112.5), 1)
    ],
    "lights": [
        {"name": "ceiling", "what": "ceiling", "plan": (90, 108, 0, 0), "lumens": 1600.0, "kelvin": 5000.0},
        {"name": "floor lamp", "what": "floor lamp", "plan": (4, 148, 12, 12), "lumens": 450.0, "bottom": 50.0},
    ],
}  # fmt: skip

STAGER_BEDROOM: Facts = {
    "ceiling": 96.0,
    "facts": {"kind": "bedroom", "floor": "carpet"},
    "openings": [
        {"name": "door", "wall": "A", "from_left": 12.0, "width": 30.0},
        {"name": "win-b", "what": "window", "wall": "B", "from_left": 54.0, "width": 36.0, "bottom": 30.0,
         "top": 80.0},
        {"name": "closet", "what": "closet", "wall": "D", "from_left": 42.0, "width": 60.0, "opens": "slides"},
    ],
    "furniture": [
        {"name": "bed", "what": "bed", "plan": (10, 82, 60, 80), "height": 25.0, "faces": "A"},
        {"name": "stand", "what": "nightstand", "plan": (72, 146, 22, 16), "height": 19.0, "faces": "A"},
        {"name": "dresser", "what": "dresser", "plan": (14, 0, 60, 18), "height": 34.0, "faces": "C"},
    ],
    "pictures": [
        {"name": "picture", "wall": "C", "from_left": 38.0, "width": 16.0, "height": 20.0, "bottom": 56.0,
         "over": "bed"},
    ],
    "lights": [{"name": "ceiling", "what": "ceiling", "plan": (72, 81, 0, 0), "lumens": 800.0, "kelvin": 4000.0}],
}  # fmt: skip

COUPLE_LIVING: Facts = {
    "ceiling": 2450.0,
    "facts": {"kind": "living-dining room"},
    "openings": [
        {"name": "door-hall", "wall": "A", "from_left": 3038.0, "width": 762.0, "hinge": "right"},
        {"name": "door-kitchen", "wall": "C", "from_left": 600.0, "width": 762.0, "opens": "out"},
        {"name": "win-front", "what": "window", "wall": "D", "from_left": 3700.0, "width": 1600.0,
         "bottom": 750.0, "top": 2050.0},
        {"name": "win-dining", "what": "window", "wall": "D", "from_left": 500.0, "width": 1200.0,
         "bottom": 900.0, "top": 2050.0, "cord": 900.0},
    ],
    "furniture": [
        {"name": "sofa", "what": "sofa", "plan": (1520, 2900, 1960, 900), "height": 820.0, "faces": "A",
         "seat": 440.0},
        {"name": "table", "what": "coffee table", "plan": (2050, 2150, 900, 500), "height": 420.0},
        {"name": "console", "what": "screen bench", "plan": (2200, 0, 1200, 400), "height": 480.0, "faces": "C"},
        {"name": "bookcase", "what": "bookcase", "plan": (0, 1500, 300, 1200), "height": 2000.0, "faces": "D"},
        {"name": "sideboard", "what": "sideboard", "plan": (0, 4300, 450, 1600), "height": 800.0, "faces": "D"},
        {"name": "dining", "what": "dining table", "plan": (1100, 4350, 900, 1500), "height": 740.0},
        *(
            {"name": f"ch{at}", "what": "dining chair", "plan": (x, y, 200, 450), "height": 880.0,
             "at": "dining", "tucked": True}
            for at, (x, y) in enumerate(((900, 4500), (900, 5250), (2000, 4500), (2000, 5250)), 1)
        ),
        {"name": "toybox", "what": "toy box", "plan": (3500, 3850, 600, 400), "height": 450.0},
        {"name": "lamp", "what": "floor lamp", "plan": (1180, 3450, 300, 300), "height": 1550.0},
        {"name": "heater", "what": "electric heater", "plan": (4010, 1200, 90, 1000), "height": 250.0, "faces": "B"},
    ],
    "rugs": [{"name": "rug", "plan": (1350, 1100, 2300, 1600)}],
    "curtains": [
        {
            "name": "curtain-front", "window": "win-front", "rod_height": 2110.0, "rod_from_left": 3650.0,
            "rod_width": 1700.0, "panel_width": 1680.0, "hem": 10.0, "stack": 250.0,
        },
    ],
    "lights": [
        {"name": "ceiling living", "what": "ceiling", "plan": (2050, 1700, 0, 0), "switch": "c1", "lumens": 806.0},
        {"name": "pendant", "what": "pendant", "plan": (2050, 4900, 0, 0), "switch": "c2", "lumens": 470.0,
         "bottom": 1770.0, "over": "dining"},
        {
            "name": "floor lamp", "what": "floor lamp", "plan": (1330, 3600, 0, 0), "switch": "l1", "lumens": 470.0,
            "kelvin": 4000.0, "bottom": 1300.0, "lead": 2500.0, "lead_over_route": True,
        },
    ],
}  # fmt: skip

COUPLE_BEDROOM: Facts = {
    "ceiling": 2450.0,
    "facts": {"kind": "bedroom", "floor": "carpet"},
    "openings": [
        {"name": "door-bed", "wall": "A", "from_left": 138.0, "width": 762.0},
        {"name": "win-bed", "what": "window", "wall": "C", "from_left": 900.0, "width": 1200.0,
         "bottom": 900.0, "top": 2050.0},
    ],
    "furniture": [
        {"name": "bed", "what": "bed", "plan": (0, 2120, 2000, 1500), "height": 600.0, "faces": "D",
         "headboard": True},
        {"name": "stand-1", "what": "nightstand", "plan": (0, 1690, 400, 400), "height": 480.0, "faces": "D"},
        {"name": "wardrobe", "what": "wardrobe", "plan": (2600, 900, 600, 1200), "height": 2000.0, "faces": "B"},
        {"name": "chest", "what": "chest of drawers", "plan": (200, 0, 1000, 450), "height": 780.0, "faces": "C"},
    ],
    "lights": [
        {"name": "ceiling", "what": "ceiling", "plan": (1600, 1900, 0, 0), "switch": "c", "lumens": 470.0},
        {"name": "wall light 1", "what": "wall light", "plan": (60, 2000, 0, 0), "switch": "w1", "lumens": 250.0},
        {"name": "wall light 2", "what": "wall light", "plan": (60, 3700, 0, 0), "switch": "w2", "lumens": 250.0},
    ],
}  # fmt: skip

TODDLER = {"children": True, "toddlers": True}


def renter() -> Survey:
    """A third-floor living room, in millimetres."""
    return room("mm", (3600.0, 4500.0), RENTER)


def stager_living() -> Survey:
    """A living room before its photographs, in inches."""
    return room("in", (180.0, 216.0), STAGER_LIVING)


def stager_bedroom() -> Survey:
    """The main bedroom of the same flat."""
    return room("in", (144.0, 162.0), STAGER_BEDROOM)


def couple_living() -> Survey:
    """A living-dining room with a toddler about, in millimetres."""
    return room("mm", (4100.0, 6200.0), COUPLE_LIVING, **TODDLER)


def couple_bedroom() -> Survey:
    """The bedroom of the same house."""
    return room("mm", (3200.0, 3800.0), COUPLE_BEDROOM, **TODDLER)
