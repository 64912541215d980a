"""Ways across the floor: the widest disc that can be carried from one place to another, and its pinch.

Every pair of things that stand side by side leaves a gap; a disc passes it when the gap is no less than the
disc. The gaps between neighbours cut the free floor into faces, and the widest way is the path over faces
whose narrowest gap is widest. Gaps are measured exactly between the things, so taking a thing away can never
narrow a way (only the ends of a way are tried at fixed points, 5 mm apart).
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import combinations

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry import LineString, Polygon

from budgetfix.room.zones import Point, Points, Ring, Zone, area_of, away_from, in_room, to_blocks, to_edges

TOUCH_MM = 0.01
"""Things nearer than this touch."""


@dataclass(frozen=True, slots=True)
class Gap:
    """The nearest two points of two things that stand side by side."""

    width_mm: float
    one: Point
    other: Point

    @property
    def middle(self) -> Point:
        return ((self.one[0] + self.other[0]) / 2, (self.one[1] + self.other[1]) / 2)


@dataclass(frozen=True, slots=True)
class Way:
    """The widest way: its width at its narrowest place (the middle of the disc), 0 where there is no way."""

    width_mm: float
    at: Point | None = None


@dataclass(frozen=True, eq=False)
class Floor:
    """The free floor of a room: its walls and what blocks it, the gaps, and which faces a gap joins."""

    walls: Ring
    blocks: tuple[Ring, ...]
    gaps: tuple[Gap, ...]
    joins: tuple[tuple[Gap, int, int], ...]
    faces: tuple[Polygon, ...]

    def clearance(self, points: Points) -> Points:
        """How far each point is from the nearest wall or thing; 0 outside the room or in a thing."""
        inside = shapely.contains_xy(area_of(self.walls), points[:, 0], points[:, 1])
        free = np.minimum(to_edges(points, (self.walls,)), to_blocks(points, self.blocks))
        return np.where(inside, free, 0.0)

    def face_of(self, points: Points, *, rims: bool = False) -> NDArray[np.int64]:
        """The face that holds each point; -1 for none. `rims`: a point on the line between two is in one of them."""
        holds = shapely.intersects_xy if rims else shapely.contains_xy
        found = np.full(len(points), -1, dtype=np.int64)
        if len(points) == 0:
            return found
        x, y = points.T
        low_x, low_y, high_x, high_y = shapely.bounds(self.faces).reshape(-1, 4).T[:, :, np.newaxis]
        boxed = (low_x <= x) & (x <= high_x) & (low_y <= y) & (y <= high_y)
        for index in np.flatnonzero(boxed.any(axis=1)):
            near = np.flatnonzero(boxed[index])
            found[near[holds(self.faces[index], x[near], y[near])]] = index
        return found


@lru_cache(maxsize=2048)
def _rim(ring: Ring) -> LineString:
    return LineString((*ring, ring[0]))


@lru_cache(maxsize=256)
def _sides(walls: Ring) -> tuple[LineString, ...]:
    return tuple(LineString(side) for side in zip(walls, (*walls[1:], walls[0]), strict=True))


@lru_cache(maxsize=512)
def floor_of(walls: Ring, blocks: tuple[Ring, ...]) -> Floor:
    """The free floor inside `walls` around `blocks` (convex footprints), all in mm."""
    meets = shapely.intersects(area_of(walls), np.array([area_of(ring) for ring in blocks], dtype=object))
    inside = tuple(ring for ring, here in zip(blocks, meets, strict=True) if here)
    gaps = _gaps(walls, inside)
    wide = [(gap.one, gap.other) for gap in gaps if gap.width_mm > TOUCH_MM]
    lines = shapely.linestrings(wide) if wide else ()
    noded = shapely.unary_union([*map(_rim, (walls, *inside)), *lines], grid_size=TOUCH_MM / 10)
    found = shapely.get_parts(shapely.polygonize(shapely.get_parts(noded)))
    spots = shapely.bounds(found).tolist()
    faces = tuple(found[at] for at in sorted(range(len(found)), key=lambda at: tuple(spots[at])))
    shapely.prepare(faces)
    bare = Floor(walls, inside, gaps, (), faces)
    return Floor(walls, inside, gaps, _joins(bare), faces)


def _gaps(walls: Ring, blocks: tuple[Ring, ...]) -> tuple[Gap, ...]:
    """Gaps between neighbours: no third thing reaches into the disc that spans the gap."""
    sites = np.array([*_sides(walls), *map(area_of, blocks)], dtype=object)
    first, second = np.triu_indices(len(sites), 1)
    ends = shapely.get_coordinates(shapely.shortest_line(sites[first], sites[second])).reshape(-1, 2, 2)
    widths = np.hypot(*(ends[:, 1] - ends[:, 0]).T)
    middles = ends.mean(axis=1)
    nearest = np.minimum(to_edges(middles, (walls,)), to_blocks(middles, blocks))
    neighbours = (widths > TOUCH_MM) & (nearest >= widths / 2 - 1e-6)
    order = np.argsort(widths, kind="stable")
    return tuple(
        Gap(
            float(widths[at]),
            (float(ends[at, 0, 0]), float(ends[at, 0, 1])),
            (float(ends[at, 1, 0]), float(ends[at, 1, 1])),
        )
        for at in order[neighbours[order]]
    )


def _joins(floor: Floor) -> tuple[tuple[Gap, int, int], ...]:
    """Which two faces lie to the left and right of each gap (tried near both ends and in the middle)."""
    wide = [gap for gap in floor.gaps if gap.width_mm > TOUCH_MM]
    tried, owners = [], []
    for gap in wide:
        across = ((gap.other[0] - gap.one[0]) / gap.width_mm, (gap.other[1] - gap.one[1]) / gap.width_mm)
        for share in (0.05, 0.5, 0.95):
            x = gap.one[0] + across[0] * gap.width_mm * share
            y = gap.one[1] + across[1] * gap.width_mm * share
            tried += [(x - across[1] * 0.1, y + across[0] * 0.1), (x + across[1] * 0.1, y - across[0] * 0.1)]
            owners.append(gap)
    faces = floor.face_of(np.array(tried, dtype=np.float64).reshape(-1, 2))
    pairs = ((gap, int(faces[2 * at]), int(faces[2 * at + 1])) for at, gap in enumerate(owners))
    return tuple(dict.fromkeys((gap, one, two) for gap, one, two in pairs if -1 not in (one, two) and one != two))


@lru_cache(maxsize=2048)
def best_of(floor: Floor, zone: Zone) -> tuple[tuple[float, Point, int], ...]:
    """The widest disc that stands at one of the points of a zone, for each face."""
    if zone.parts:
        widest: dict[int, tuple[float, Point, int]] = {}
        for width, at, face in (best for part in zone.parts for best in best_of(floor, part)):
            if face not in widest or width > widest[face][0]:
                widest[face] = (width, at, face)
        return tuple(widest.values())
    free = [in_room(zone, floor.walls), *(away_from(zone, ring) for ring in floor.blocks)]
    widths = 2 * np.minimum.reduce(free)
    kept = widths > 1.0
    points, widths = zone.points[kept], widths[kept]
    order = np.argsort(-widths, kind="stable")
    faces = floor.face_of(points, rims=True)[order]
    _, firsts = np.unique(faces, return_index=True)
    return tuple(
        (float(widths[order[at]]), (float(points[order[at], 0]), float(points[order[at], 1])), int(faces[at]))
        for at in sorted(firsts)
        if faces[at] >= 0
    )


class _Sets:
    """Faces that are joined so far."""

    def __init__(self) -> None:
        self.parent: dict[int, int] = {}

    def root(self, face: int) -> int:
        while self.parent.get(face, face) != face:
            face = self.parent[face]
        return face

    def join(self, one: int, other: int) -> None:
        self.parent[self.root(one)] = self.root(other)

    def joined(self, one: int, other: int) -> bool:
        return self.root(one) == self.root(other)


_START, _END = -2, -3


@lru_cache(maxsize=4096)
def widest_way(floor: Floor, starts: Zone, ends: Zone) -> Way:
    """The widest disc that can be carried from one of the starts to one of the ends."""
    joins = [(gap.width_mm, gap.middle, one, two) for gap, one, two in floor.joins]
    joins += [(width, at, _START, face) for width, at, face in best_of(floor, starts)]
    joins += [(width, at, _END, face) for width, at, face in best_of(floor, ends)]
    sets = _Sets()
    for width, at, one, two in sorted(joins, key=lambda join: (-join[0], join[1], join[2], join[3])):
        sets.join(one, two)
        if sets.joined(_START, _END):
            return Way(width, at)
    return Way(0.0)


@dataclass(frozen=True, slots=True)
class Passing:
    """What lets a way pass: `wide_mm` all along, but for pinches of `pinch_mm` no longer than `run_mm`.

    `apart_mm`: how far apart two pinches must be; None: only one pinch is let pass.
    """

    wide_mm: float
    pinch_mm: float
    run_mm: float
    apart_mm: float | None = None
    tolerance_mm: float = 0.1


@lru_cache(maxsize=4096)
def passes(floor: Floor, starts: Zone, ends: Zone, rule: Passing) -> bool:
    """True where a way of `wide_mm` exists, or one with only such pinches as the rule lets pass."""
    least = rule.wide_mm - rule.tolerance_mm
    base = [(one, two) for gap, one, two in floor.joins if gap.width_mm >= least]
    base += [(_START, face) for width, _, face in best_of(floor, starts) if width >= least]
    base += [(_END, face) for width, _, face in best_of(floor, ends) if width >= least]
    if _connected(base):
        return True
    pinches = _short_pinches(floor, rule)
    groups = range(len(pinches))
    most = len(pinches) if rule.apart_mm is not None else 1
    for size in range(1, min(most, 4) + 1):
        for chosen in combinations(groups, size):
            picked = [pinches[at] for at in chosen]
            if _apart(picked, rule) and _connected([*base, *(pair for pinch in picked for pair in pinch[1])]):
                return True
    return False


_Pinch = tuple[LineString, list[tuple[int, int]]]


def _connected(pairs: Sequence[tuple[int, int]]) -> bool:
    sets = _Sets()
    for one, two in pairs:
        sets.join(one, two)
    return sets.joined(_START, _END)


def _short_pinches(floor: Floor, rule: Passing) -> list[_Pinch]:
    """The pinches that are wide and short enough; gaps on one stretch are one pinch."""
    found: list[_Pinch] = []
    for gap, one, two in floor.joins:
        wide_enough = rule.pinch_mm - rule.tolerance_mm <= gap.width_mm < rule.wide_mm - rule.tolerance_mm
        if not wide_enough:
            continue
        stretch = narrow_stretch(floor, gap, rule.wide_mm - rule.tolerance_mm)
        if stretch.length > rule.run_mm + rule.tolerance_mm:
            continue
        same = next((pinch for pinch in found if pinch[0].distance(stretch) <= rule.run_mm / 2), None)
        if same is None:
            found.append((stretch, [(one, two)]))
        else:
            same[1].append((one, two))
    return found


def _apart(picked: list[_Pinch], rule: Passing) -> bool:
    if rule.apart_mm is None:
        return len(picked) <= 1
    return all(one[0].distance(two[0]) >= rule.apart_mm - rule.tolerance_mm for one, two in combinations(picked, 2))


def narrow_stretch(floor: Floor, gap: Gap, wide_mm: float) -> LineString:
    """The stretch through a gap, straight on, where the width straight across stays under `wide_mm`."""
    ax, ay = (gap.other[0] - gap.one[0]) / gap.width_mm, (gap.other[1] - gap.one[1]) / gap.width_mm
    mx, my = gap.middle

    def turned(ring: Ring) -> list[Point]:
        return [((x - mx) * -ay + (y - my) * ax, (x - mx) * ax + (y - my) * ay) for x, y in ring]

    edges = [
        (p, q)
        for ring in map(turned, (floor.walls, *floor.blocks))
        for p, q in zip(ring, ring[1:] + ring[:1], strict=True)
    ]
    forth = _until_wide(edges, wide_mm, lambda along: along)
    back = _until_wide(edges, wide_mm, lambda along: -along)
    return LineString([(mx + -ay * along, my + ax * along) for along in (-back, forth)])


def _until_wide(edges: list[tuple[Point, Point]], wide_mm: float, side: Callable[[float], float]) -> float:
    """How far one can go from the gap until it is `wide_mm` across; between two corners widths are linear."""
    stops = sorted({side(end[0]) for edge in edges for end in edge if side(end[0]) > TOUCH_MM})
    done = 0.0
    for stop in stops:
        near, far = (_across(edges, side(at)) for at in (done + TOUCH_MM / 2, stop - TOUCH_MM / 2))
        if near >= wide_mm:
            return done
        if far >= wide_mm:
            return done + (stop - done) * (wide_mm - near) / (far - near)
        done = stop
    return done


def _across(edges: list[tuple[Point, Point]], along: float) -> float:
    up, down = math.inf, math.inf
    for (ax, ay), (bx, by) in edges:
        if min(ax, bx) <= along <= max(ax, bx) and ax != bx:
            height = ay + (by - ay) * (along - ax) / (bx - ax)
            up, down = (min(up, height), down) if height >= 0 else (up, min(down, -height))
    return up + down
