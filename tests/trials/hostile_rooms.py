"""A small measured room in which every name that a person gives is one of the words."""

from __future__ import annotations

import json
import random

from tests.trials import hostile_texts

PLACES = 20
PLAIN = tuple(f"words {at}" for at in range(PLACES))
"""A word for each place of the room."""


def drawn(chance: random.Random, never: bool = False) -> tuple[str, ...]:
    """A word for each place, as for listed faults; sentences about several things part them by semicolons."""
    return tuple(word.replace(";", ",") for word in hostile_texts.drawn(chance, never))


def files(words: tuple[str, ...]) -> dict[str, bytes]:
    """A room with everything in it that can have a name, a fault of one's own, goods, and two days of two people."""
    stain, want, room, shop, fix, door, window, curtain, sofa, table = words[:10]
    print_, group, rug, lamp, switch, socket, a_shop, ann, ben, where = words[10:]
    place = {"room": room}
    survey = {
        "unit": "mm",
        "home": {"rent": True, "children": True},
        "rooms": [{**place, "kind": "living room", "ceiling": 2500, "floor": "hard"}],
        "walls": [{**place, "wall": wall, "length": long} for wall, long in zip("ABCD", (3600, 4500) * 2, strict=True)],
        "openings": [
            {**place, "name": door, "wall": "A", "from_left": 250, "width": 800, "what": "door", "top": 2010},
            {**place, "name": window, "wall": "C", "from_left": 1000, "width": 1400, "what": "window", "bottom": 900,
             "top": 2100},
        ],
        "curtains": [
            {**place, "name": curtain, "window": window, "rod_height": 2160, "rod_from_left": 950, "rod_width": 1500,
             "panel_width": 1100, "hem": 70},
        ],
        "furniture": [
            {**place, "name": sofa, "what": "sofa", "wall": "B", "from_left": 1300, "width": 2100, "depth": 880,
             "height": 800, "seat": 430},
            {**place, "name": table, "what": "coffee table", "wall": "B", "from_left": 2050, "gap": 1480, "width": 600,
             "depth": 500, "height": 450},
        ],
        "pictures": [
            {**place, "name": print_, "what": "picture", "wall": "B", "from_left": 2100, "width": 300, "height": 300,
             "bottom": 1700, "over": sofa, "group": group},
        ],
        "rugs": [
            {**place, "name": rug, "wall": "B", "from_left": 1750, "gap": 1000, "width": 1200, "depth": 1700,
             "pad": False},
        ],
        "lights": [{**place, "name": lamp, "what": "ceiling", "switch": switch, "lumens": 1000, "kelvin": 4000}],
        "sockets": [{**place, "name": socket, "wall": "D", "from_left": 1500}],
        "faults": [{"fault": stain, "points": 120, "what": want, "where": where}],
    }  # fmt: skip
    catalog = {
        "currency": "EUR",
        "shops": [{"shop": shop, "name": a_shop, "delivery": 5}],
        "remedies": [{"remedy": fix, "name": want, "answers": {stain: 1}, "cost": 5, "hours": 1}],
    }
    brief = {
        "currency": "EUR", "budget": 60, "ordered": "2026-06-01", "catalog": "catalog.yaml",
        "people": {ann: {}, ben: {}},
        "hours": [{"date": f"2026-06-0{day}", "people": {ann: 3, ben: 3}} for day in (6, 7)],
    }  # fmt: skip
    named = (("survey.yaml", survey), ("catalog.yaml", catalog), ("brief.yaml", brief))
    return {name: json.dumps(what).encode() for name, what in named}
