"""A catalog of remedies as CSV."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

from budgetfix.catalog.models import Catalog, Remedy, WorkStep
from budgetfix.intake.catalog_build import build_catalog
from budgetfix.intake.catalog_raw import raw_csv_catalog

F = Fraction
HEADS = "remedy,name,answers,cost,hours,pick_one,needs,excludes,people"


def read(folder: Path, text: str) -> tuple[Catalog, list[str]]:
    """A catalog and its problems as people read them."""
    path = folder / "catalog.csv"
    path.write_text(text, encoding="utf-8")
    catalog, problems = build_catalog(raw_csv_catalog(path), "EUR", "mm", ("f1", "f2"), ("rug-pad",))
    return catalog, [str(problem) for problem in sorted(problems)]


def test_all_columns(tmp_path: Path) -> None:
    """Answers and spends in pairs, lists with semicolons, hours as one step."""
    text = f"{HEADS},spends\nm1,Paint it,f1:1.0; f2:0.5,12.50,1.5,g1,m2; m3,m4,2,holes:2; kg:12\n"
    text += "".join(f"{name},,f1:1,,,,,,,\n" for name in ("m2", "m3", "m4"))
    catalog, problems = read(tmp_path, text)
    assert problems == []
    assert catalog.remedies[0] == Remedy(
        remedy="m1",
        name="Paint it",
        answers=(("f1", F(1)), ("f2", F(1, 2))),
        cost_minor=1250,
        pick_one="g1",
        needs=("m2", "m3"),
        excludes=("m4",),
        spends=(("holes", F(2)), ("kg", F(12))),
        people=2,
        steps=(WorkStep(minutes=90),),
    )
    assert catalog.remedies[1] == Remedy(remedy="m2", name="m2", answers=(("f1", F(1)),))


def test_semicolons_between_fields(tmp_path: Path) -> None:
    """Where semicolons part the fields, lists stand in quotes."""
    catalog, problems = read(tmp_path, 'remedy;answers;cost\nm1;"f1:1; f2:-0.5";3\n')
    assert problems == []
    assert catalog.remedies == (
        Remedy(remedy="m1", name="m1", answers=(("f1", F(1)), ("f2", F(-1, 2))), cost_minor=300),
    )


def test_kinds_for_measured_rooms(tmp_path: Path) -> None:
    """`kind`, `on` and `set` may stand in columns of their own."""
    catalog, problems = read(tmp_path, "remedy,kind,on,set\nm1,rug-pad,rug,pad = yes; width = 2 m\n")
    assert problems == []
    assert (catalog.remedies[0].kind, catalog.remedies[0].on) == ("rug-pad", "rug")
    assert catalog.remedies[0].set == (("pad", True), ("width", 2000.0))


def test_every_problem_with_its_cell(tmp_path: Path) -> None:
    """All mistakes at once, sorted by place, word for word."""
    text = (
        f"{HEADS}\n"
        "m1,Paint,f1:1.0; f9:0.5,12.5O,soon,,m1,,0\n"
        "m1,Again,f1,,,,,,\n"
        ",,,,,,,,\n"
        "m2,Two,,\"12,50\",,,mx,m1,x\n"
    )  # fmt: skip
    step = "hours such as 0.5, or {low: 0.5, likely: 0.75, high: 1.5}"
    assert read(tmp_path, text)[1] == [
        "catalog.csv [C2] found 'f9', wanted the name of a listed fault",
        "catalog.csv [D2] found '12.5O', wanted a price such as 12.50",
        f"catalog.csv [E2] found 'soon', wanted {step}",
        "catalog.csv [I2] found '0', wanted a number of people; 1 or more people",
        "catalog.csv [A3] found 'm1' a second time, wanted each name once",
        "catalog.csv [C3] found 'f1', wanted pairs such as name:1.5; other:2; 'f1' has no colon",
        "catalog.csv [C5] found nothing, wanted answers to a listed fault, or a kind",
        "catalog.csv [D5] found '12,50', wanted a price such as 12.50; write a point, not a comma: 12.50",
        "catalog.csv [G5] found 'mx', wanted the name of a remedy",
        "catalog.csv [I5] found 'x', wanted a number of people",
    ]


def test_decimal_commas_beside_semicolons(tmp_path: Path) -> None:
    """As programs of half of Europe save it: the same money and the same minutes."""
    text = f"{HEADS.replace(',', ';')}\nm1;Paint;f1:1.0;12,50;0,75;;;;1\n"
    catalog, problems = read(tmp_path, text)
    assert problems == []
    assert (catalog.remedies[0].cost_minor, catalog.remedies[0].steps[0].minutes) == (1250, 45)
