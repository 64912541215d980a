"""Names in a catalog: used once, known, and no circle of needs."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from budgetfix.base.problems import FileProblem
from budgetfix.catalog.models import Catalog
from budgetfix.intake.catalog_raw import RawCatalog
from budgetfix.intake.inside import named_place
from budgetfix.intake.raw_rows import RawRow, close_to
from budgetfix.intake.reader import Record, name_of, named_rows

KEY = {"tools": "tool", "shops": "shop", "products": "product", "remedies": "remedy"}


def link(
    raw: RawCatalog, catalog: Catalog, faults: tuple[str, ...], kinds: tuple[str, ...], problems: list[FileProblem]
) -> None:
    """Note every name that stands twice, is not known, or closes a circle."""
    listed = dict.fromkeys(faults)
    ids = {table: _ids(raw.rows.get(table, []), KEY[table], problems) for table in KEY}
    rows = ids["remedies"]
    for product, row in zip(catalog.products, named_rows(raw.rows.get("products", []), "product"), strict=True):
        _known(row, "shop", [product.shop] if product.shop else [], ids["shops"], problems)
    for remedy, row in zip(catalog.remedies, named_rows(raw.rows.get("remedies", []), "remedy"), strict=True):
        _known(row, "answers", [fault for fault, _ in remedy.answers], listed, problems)
        _known(row, "uses", [product for product, _ in remedy.uses], ids["products"], problems)
        _known(row, "tools", remedy.tools, ids["tools"], problems)
        _known(row, "needs", remedy.needs, rows, problems)
        _known(row, "excludes", remedy.excludes, rows, problems)
        if remedy.kind is not None:
            _kind(row, remedy.kind, kinds, problems)
        if any(relief > 1 for _, relief in remedy.answers):
            Record(row, problems).problem("answers", "shares of at most 1")
    _circles(catalog, rows, problems)


def _ids(rows: Iterable[RawRow], key: str, problems: list[FileProblem]) -> dict[str, RawRow]:
    found: dict[str, RawRow] = {}
    for row in named_rows(rows, key):
        name = name_of(row, key)
        if name in found:
            problems.append(FileProblem(row.place_of(key), f"'{name}' a second time", "each name once"))
        found.setdefault(name, row)
    return found


def _known(
    row: RawRow, field: str, names: Iterable[str], known: Mapping[str, object], problems: list[FileProblem]
) -> None:
    for name in names:
        if name not in known:
            there = list(known)
            near = close_to(name, there)
            sort = {"answers": "listed fault", "uses": "product", "shop": "shop", "tools": "tool"}
            wanted = f"the name of a {sort.get(field, 'remedy')}"
            problems.append(FileProblem(named_place(row, field, name), f"'{name}'", wanted, near))


def _kind(row: RawRow, kind: str, kinds: tuple[str, ...], problems: list[FileProblem]) -> None:
    if kind not in kinds:
        wanted = f"one of: {', '.join(kinds)}"
        problems.append(FileProblem(row.place_of("kind"), f"'{kind}'", wanted, close_to(kind, list(kinds))))


def _circles(catalog: Catalog, rows: dict[str, RawRow], problems: list[FileProblem]) -> None:
    """Each circle of needs once, at the remedy in it that comes first by name."""
    needs = _entangled({remedy.remedy: tuple(sorted(remedy.needs)) for remedy in catalog.remedies})
    told: set[frozenset[str]] = set()
    for start in sorted(needs):
        circle = _way_back(start, needs)
        if circle and frozenset(circle) not in told:
            told.add(frozenset(circle))
            shown = " needs ".join((*circle, circle[0]))
            problems.append(FileProblem(rows[start].place_of("needs"), shown, "needs without a circle"))


def _entangled(needs: dict[str, tuple[str, ...]]) -> dict[str, tuple[str, ...]]:
    """Only those that lead into a circle: whoever needs nothing that is left is peeled off, again and again."""
    needed_by: dict[str, list[str]] = {name: [] for name in needs}
    waits = dict.fromkeys(needs, 0)
    for name, wanted in needs.items():
        for need in dict.fromkeys(wanted):
            if need in needs:
                needed_by[need].append(name)
                waits[name] += 1
    free = [name for name in needs if not waits[name]]
    while free:
        for name in needed_by[free.pop()]:
            waits[name] -= 1
            if not waits[name]:
                free.append(name)
    return {name: wanted for name, wanted in needs.items() if waits[name]}


def _way_back(start: str, needs: dict[str, tuple[str, ...]]) -> tuple[str, ...]:
    paths: list[tuple[str, ...]] = [(start,)]
    seen = {start}
    while paths:
        path = paths.pop(0)
        for need in needs.get(path[-1], ()):
            if need == start:
                return path
            if need not in seen:
                seen.add(need)
                paths.append((*path, need))
    return ()
