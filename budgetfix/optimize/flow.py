"""Steps that nothing ties together, in the fewest equal sessions: exact, as a flow of sessions being filled.

One unit of flow is one session; it runs from level 0 upwards, each arc adding one step. Among steps of equal length
nothing is told apart, so the symmetry of a plain timetable is gone. After J.M. Valério de Carvalho, Exact solution of
bin-packing problems using column generation and branch-and-bound, Annals of Operations Research 86, 1999.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from typing import Literal

from budgetfix.optimize.solver import Engine, Program, Row, run

Arc = tuple[int, int]
"""(level, minutes added)."""


def fewest(
    minutes: Sequence[int], room: int, seconds: float, engine: Engine = "highs"
) -> list[list[int]] | Literal["unknown"]:
    """Sessions as lists of places in `minutes`, none of them filled beyond `room`; fewer would not do."""
    counts = Counter(one for one in minutes if one)
    arcs = list(_arcs(counts, room))
    program = Program()
    for level, size in arcs:
        program.integer(_name((level, size)), counts[size])
    program.add(demands(counts, arcs))
    program.add(levels(arcs))
    starts = tuple((1, _name(arc)) for arc in arcs if arc[0] == 0)
    solved = run(program, starts, seconds, engine)
    if solved.status != "optimal" or solved.values is None:
        return "unknown"
    return _sessions(minutes, {arc: round(solved.values[_name(arc)]) for arc in arcs})


def _name(arc: Arc) -> str:
    return f"f[{arc[0]},{arc[1]}]"


def _arcs(counts: Counter[int], room: int) -> Iterator[Arc]:
    """Longest steps first, so that each filling is one path; levels that no filling reaches are left out."""
    levels_known = {0}
    for size in sorted(counts, reverse=True):
        reached = set()
        for start in sorted(levels_known):
            for times in range(counts[size]):
                level = start + times * size
                if level + size > room:
                    break
                reached.add((level, size))
        levels_known |= {level + size for level, size in reached}
        yield from sorted(reached)


def demands(counts: Counter[int], arcs: Sequence[Arc]) -> Iterator[Row]:
    """Every step is in some session."""
    for size in sorted(counts, reverse=True):
        yield Row(f"all_{size}", tuple((1, _name(arc)) for arc in arcs if arc[1] == size), "=", counts[size])


def levels(arcs: Sequence[Arc]) -> Iterator[Row]:
    """No more sessions go on from a level than have come to it."""
    into: dict[int, list[tuple[int, str]]] = {}
    for level, size in arcs:
        into.setdefault(level + size, []).append((-1, _name((level, size))))
    for start in sorted({level for level, _ in arcs} - {0}):
        out = tuple((1, _name(arc)) for arc in arcs if arc[0] == start)
        yield Row(f"level_{start}", (*out, *into.get(start, [])), "<=", 0)


def _sessions(minutes: Sequence[int], flow: dict[Arc, int]) -> list[list[int]]:
    """The flow taken apart into sessions."""
    waiting: dict[int, list[int]] = {}
    for place, one in enumerate(minutes):
        waiting.setdefault(one, []).append(place)
    found: list[list[int]] = []
    while any(count for (level, _), count in flow.items() if level == 0):
        level, session = 0, list[int]()
        while (arc := next((arc for arc, count in flow.items() if arc[0] == level and count), None)) is not None:
            flow[arc] -= 1
            session.append(waiting[arc[1]].pop(0))
            level += arc[1]
        found.append(session)
    if 0 in waiting:
        found = found or [[]]
        found[0].extend(waiting[0])
    return found
