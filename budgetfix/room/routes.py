"""Ways across the floor: the widest disc that can be carried from one place to another, and its pinch.

Every pair of things that stand side by side leaves a gap; a disc passes it when the gap is no less than the
disc. The gaps between neighbours cut the free floor into faces, and the widest way is the path over faces
whose narrowest gap is widest. Gaps are measured exactly between the things, so taking a thing away can never
narrow a way (only the ends of a way are tried at fixed points, 5 mm apart).
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import combinations

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry import LineString, Polygon

from budgetfix.room.places import WallLine

Point = tuple[float, float]
Ring = tuple[Point, ...]
Points = NDArray[np.float64]

TOUCH_MM = 0.01
"""Things nearer than this touch."""
NEAR_MM, FAR_MM = 250.0, 700.0
"""A way starts with the middle of the disc this far inside its door."""
REACH_MM = 914.0
"""A way to a seat or a bed ends this near it (36 in)."""
STEP_MM = 5.0


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
class Zone:
    """Points where the middle of a disc may start or end (compared by identity: each is made once)."""

    points: Points


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
        room = Polygon(self.walls)
        shapely.prepare(room)
        inside = shapely.contains_xy(room, points[:, 0], points[:, 1])
        free = np.minimum(_to_edges(points, (self.walls,)), _to_blocks(points, self.blocks))
        return np.where(inside, free, 0.0)

    def face_of(self, points: Points) -> NDArray[np.int64]:
        """The face that holds each point; -1 for none."""
        found = np.full(len(points), -1, dtype=np.int64)
        if len(points) == 0:
            return found
        low, high = points.min(axis=0), points.max(axis=0)
        for index, face in enumerate(self.faces):
            x0, y0, x1, y1 = face.bounds
            if x0 <= high[0] and low[0] <= x1 and y0 <= high[1] and low[1] <= y1:
                found[shapely.contains_xy(face, points[:, 0], points[:, 1])] = index
        return found


def _upright(block: Ring) -> bool:
    return len({x for x, _ in block}) == 2 and len({y for _, y in block}) == 2


def _to_blocks(points: Points, blocks: Iterable[Ring]) -> Points:
    """Distance to the nearest block; upright rectangles all at once."""
    nearest = np.full(len(points), np.inf)
    upright = []
    for block in blocks:
        if _upright(block):
            upright.append((*map(min, zip(*block, strict=True)), *map(max, zip(*block, strict=True))))
            continue
        within = shapely.contains_xy(Polygon(block), points[:, 0], points[:, 1])
        nearest = np.minimum(nearest, np.where(within, 0.0, _to_edges(points, (block,))))
    if upright:
        low_x, low_y, high_x, high_y = np.array(upright, dtype=np.float64).T
        dx = np.maximum(np.maximum(low_x - points[:, :1], points[:, :1] - high_x), 0.0)
        dy = np.maximum(np.maximum(low_y - points[:, 1:], points[:, 1:] - high_y), 0.0)
        nearest = np.minimum(nearest, np.sqrt((dx * dx + dy * dy).min(axis=1)))
    return nearest


def _to_edges(points: Points, rings: Iterable[Ring]) -> Points:
    nearest = np.full(len(points), np.inf)
    for ring in rings:
        for (ax, ay), (bx, by) in zip(ring, (*ring[1:], ring[0]), strict=True):
            length = math.hypot(bx - ax, by - ay) or 1.0
            ux, uy = (bx - ax) / length, (by - ay) / length
            px, py = points[:, 0] - ax, points[:, 1] - ay
            along = np.clip(px * ux + py * uy, 0.0, length)
            nearest = np.minimum(nearest, np.hypot(px - along * ux, py - along * uy))
    return nearest


@lru_cache(maxsize=512)
def floor_of(walls: Ring, blocks: tuple[Ring, ...]) -> Floor:
    """The free floor inside `walls` around `blocks` (convex footprints), all in mm."""
    room = Polygon(walls)
    sides = [LineString(side) for side in zip(walls, (*walls[1:], walls[0]), strict=True)]
    inside = [ring for ring in blocks if room.intersects(Polygon(ring))]
    gaps = _gaps(sides, [Polygon(ring) for ring in inside])
    lines = [LineString((gap.one, gap.other)) for gap in gaps if gap.width_mm > TOUCH_MM]
    rings = [LineString((*ring, ring[0])) for ring in (walls, *inside)]
    noded = shapely.unary_union([*rings, *lines], grid_size=TOUCH_MM / 10)
    polygons = shapely.polygonize(list(shapely.get_parts(noded))).geoms
    faces = tuple(sorted((face for face in polygons if isinstance(face, Polygon)), key=lambda face: face.bounds))
    for face in faces:
        shapely.prepare(face)
    bare = Floor(walls, tuple(inside), gaps, (), faces)
    return Floor(walls, tuple(inside), gaps, _joins(bare), faces)


def _gaps(sides: list[LineString], blocks: list[Polygon]) -> tuple[Gap, ...]:
    """Gaps between neighbours: no third thing reaches into the disc that spans the gap."""
    sites = np.array([*sides, *blocks], dtype=object)
    first, second = np.triu_indices(len(sites), 1)
    ends = shapely.get_coordinates(shapely.shortest_line(sites[first], sites[second])).reshape(-1, 2, 2)
    widths = np.hypot(*(ends[:, 1] - ends[:, 0]).T)
    middles = ends.mean(axis=1)
    order = np.argsort(widths, kind="stable")
    nearest = np.full(len(widths), np.inf)
    for side in sides:
        nearest = np.minimum(nearest, _to_edges(middles, (_ring(side),)))
    nearest = np.minimum(nearest, _to_blocks(middles, [_ring(block) for block in blocks]))
    neighbours = (widths > TOUCH_MM) & (nearest >= widths / 2 - 1e-6)
    return tuple(
        Gap(
            float(widths[at]),
            (float(ends[at, 0, 0]), float(ends[at, 0, 1])),
            (float(ends[at, 1, 0]), float(ends[at, 1, 1])),
        )
        for at in order
        if neighbours[at]
    )


def _ring(shape: LineString | Polygon) -> Ring:
    coordinates = shape.exterior.coords[:-1] if isinstance(shape, Polygon) else shape.coords
    return tuple((float(x), float(y)) for x, y in coordinates)


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


@lru_cache(maxsize=512)
def inside_door(line: WallLine, from_left: float, width: float) -> Zone:
    """Where a way through this door may start: 250 to 700 mm inside it, between its jambs."""
    across = np.linspace(0.0, width, 2 * max(1, round(width / STEP_MM / 2)) + 1)
    deep = np.linspace(NEAR_MM, FAR_MM, round((FAR_MM - NEAR_MM) / STEP_MM) + 1)
    sides = [(a, d) for a in (0.0, width) for d in deep]
    rims = [(a, d) for d in (NEAR_MM, FAR_MM) for a in across]
    within = [(a, d) for a in across[::10] for d in deep[::10]]
    local = np.array([*sides, *rims, *within], dtype=np.float64)
    start, along, inward = np.array(line.start), np.array(line.along), np.array(line.inward)
    return Zone(np.asarray(start + np.outer(local[:, 0] + from_left, along) + np.outer(local[:, 1], inward)))


@lru_cache(maxsize=512)
def near_piece(ring: Ring, starts: Zone) -> Zone:
    """Where a way to this piece may end: on the line 914 mm around it, or at a start that is near already."""
    rim = Polygon(ring).buffer(REACH_MM, quad_segs=64).exterior
    ends = shapely.get_coordinates(shapely.segmentize(rim, 2 * STEP_MM))[:-1]
    near = starts.points[_to_blocks(starts.points, (ring,)) <= REACH_MM]
    return Zone(np.asarray(np.vstack([ends, near]), dtype=np.float64))


@lru_cache(maxsize=2048)
def _best(floor: Floor, zone: Zone) -> tuple[tuple[float, Point, int], ...]:
    """The widest disc that stands at one of the points of a zone, for each face."""
    points = zone.points
    widths = 2 * floor.clearance(points)
    kept = widths > 1.0
    points, widths = points[kept], widths[kept]
    order = np.argsort(-widths, kind="stable")
    faces = floor.face_of(points)
    best: dict[int, tuple[float, Point, int]] = {}
    for at in order:
        face = int(faces[at])
        if face >= 0 and face not in best:
            best[face] = (float(widths[at]), (float(points[at, 0]), float(points[at, 1])), face)
    return tuple(best.values())


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
    joins += [(width, at, _START, face) for width, at, face in _best(floor, starts)]
    joins += [(width, at, _END, face) for width, at, face in _best(floor, ends)]
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
    base += [(_START, face) for width, _, face in _best(floor, starts) if width >= least]
    base += [(_END, face) for width, _, face in _best(floor, ends) if width >= least]
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
