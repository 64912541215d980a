"""Where a way may start and end, and how far points are from walls and things. Millimetres, on plan."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry import Polygon

from budgetfix.room.places import WallLine

Point = tuple[float, float]
Ring = tuple[Point, ...]
Points = NDArray[np.float64]

NEAR_MM, FAR_MM = 250.0, 700.0
"""A way starts with the middle of the disc this far inside its door."""
REACH_MM = 914.0
"""A way to a seat or a bed ends this near it (36 in)."""
STEP_MM = 5.0


@dataclass(frozen=True, eq=False)
class Zone:
    """Points where the middle of a disc may start or end (compared by identity: each is made once).

    `parts`: the zones that it is made of, where there are several; their figures are kept apart.
    """

    points: Points
    parts: tuple[Zone, ...] = ()


def _upright(block: Ring) -> bool:
    return len({x for x, _ in block}) == 2 and len({y for _, y in block}) == 2


def to_blocks(points: Points, blocks: Iterable[Ring]) -> Points:
    """Distance to the nearest block; upright rectangles all at once."""
    nearest = np.full(len(points), np.inf)
    upright = []
    for block in blocks:
        if _upright(block):
            upright.append((*map(min, zip(*block, strict=True)), *map(max, zip(*block, strict=True))))
            continue
        within = shapely.contains_xy(area_of(block), points[:, 0], points[:, 1])
        nearest = np.minimum(nearest, np.where(within, 0.0, to_edges(points, (block,))))
    if upright:
        low_x, low_y, high_x, high_y = np.array(upright, dtype=np.float64).T
        dx = np.maximum(np.maximum(low_x - points[:, :1], points[:, :1] - high_x), 0.0)
        dy = np.maximum(np.maximum(low_y - points[:, 1:], points[:, 1:] - high_y), 0.0)
        nearest = np.minimum(nearest, np.sqrt((dx * dx + dy * dy).min(axis=1)))
    return nearest


def to_edges(points: Points, rings: Iterable[Ring]) -> Points:
    """Distance to the nearest edge of these rings."""
    nearest = np.full(len(points), np.inf)
    for ring in rings:
        for (ax, ay), (bx, by) in zip(ring, (*ring[1:], ring[0]), strict=True):
            length = math.hypot(bx - ax, by - ay) or 1.0
            ux, uy = (bx - ax) / length, (by - ay) / length
            px, py = points[:, 0] - ax, points[:, 1] - ay
            along = np.clip(px * ux + py * uy, 0.0, length)
            nearest = np.minimum(nearest, np.hypot(px - along * ux, py - along * uy))
    return nearest


@lru_cache(maxsize=2048)
def area_of(ring: Ring) -> Polygon:
    """The polygon inside a ring, prepared."""
    area = Polygon(ring)
    shapely.prepare(area)
    return area


@lru_cache(maxsize=512)
def inside_door(line: WallLine, from_left: float, width: float) -> Zone:
    """Where a way through this door may start: 250 to 700 mm inside it, between its jambs."""
    across = np.linspace(0.0, width, 2 * max(1, round(width / STEP_MM / 2)) + 1)
    deep = np.linspace(NEAR_MM, FAR_MM, round((FAR_MM - NEAR_MM) / STEP_MM) + 1)
    sides = [(a, d) for a in (0.0, width) for d in deep]
    rims = [(a, d) for d in (NEAR_MM, FAR_MM) for a in across]
    wide = np.linspace(0.0, width, 2 * max(1, round(width / STEP_MM / 20)) + 1)
    within = [(a, d) for a in wide for d in deep[::10]]
    local = np.array([*sides, *rims, *within], dtype=np.float64)
    start, along, inward = np.array(line.start), np.array(line.along), np.array(line.inward)
    return Zone(np.asarray(start + np.outer(local[:, 0] + from_left, along) + np.outer(local[:, 1], inward)))


@lru_cache(maxsize=512)
def near_piece(ring: Ring, starts: Zone) -> Zone:
    """Where a way to this piece may end: on the line 914 mm around it, or at a start that is near already."""
    around = _around(ring)
    near = starts.points[away_from(starts, ring) <= REACH_MM]
    parts = (around, Zone(near)) if len(near) else (around,)
    return Zone(np.asarray(np.vstack([part.points for part in parts]), dtype=np.float64), parts)


@lru_cache(maxsize=512)
def _around(ring: Ring) -> Zone:
    rim = Polygon(ring).buffer(REACH_MM, quad_segs=64).exterior
    return Zone(np.asarray(shapely.get_coordinates(shapely.segmentize(rim, 2 * STEP_MM))[:-1], dtype=np.float64))


@lru_cache(maxsize=2048)
def away_from(zone: Zone, ring: Ring) -> Points:
    """How far each point of a zone is from one thing; 0 in it. Kept, since most things stay where they are."""
    return to_blocks(zone.points, (ring,))


@lru_cache(maxsize=512)
def in_room(zone: Zone, walls: Ring) -> Points:
    """How far each point of a zone is from the nearest wall; 0 outside the room."""
    return np.where(shapely.contains_xy(area_of(walls), zone.points), to_edges(zone.points, (walls,)), 0.0)
