"""A catalog typed as YAML, or written as JSON by a program."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from budgetfix.catalog.models import WHATS, Catalog, Product, Remedy, SetChange, Shop, Tool, WorkStep
from budgetfix.intake.catalog_build import build_catalog
from budgetfix.intake.catalog_raw import quick_json, raw_yaml_catalog
from budgetfix.intake.catalog_yaml import read_catalog_bytes
from budgetfix.pipeline.demo_data import starter_catalog

F = Fraction
FAULTS = ("f1", "f3", "f4")
KINDS = ("longer-rod", "rug-pad")
FULL = """
currency: USD
unit: mm
tools:    [{tool: drill, name: cordless drill, own: false, buy: 59.00, hire_per_session: 14.00}]
shops:    [{shop: mill, delivery: 5.90, free_over: 60.00, tax: 8.25%}]
products: [{product: paint, name: wall paint, shop: mill, price: 22.00, pack: 2.5, unit: L, on_hand: 0, lead_days: 0}]
remedies:
  - remedy: m3
    answers: {f1: 1}
  - remedy: m9
    answers: {f1: 1}
  - remedy: m12
    name: Fill and touch up the old holes
    answers: {f3: 0.8, f4: -0.2}
    kind: longer-rod
    on: win
    set: {rod_width: 1900, rod_height: 2390}
    cost: 34.50
    uses: {paint: 0.7}
    tools: [drill]
    pick_one: g4
    needs: [m3]
    excludes: [m9]
    spends: {holes: 2}
    people: 1
    steps: [{hours: 0.5}, {hours: 0.5, wait_sessions: 1, wait_hours: 4}]
"""


def read(folder: Path, text: str, unit: str = "mm", currency: str = "USD") -> tuple[Catalog, list[str]]:
    """A catalog and its problems as people read them."""
    path = folder / "catalog.yaml"
    path.write_text(text, encoding="utf-8")
    catalog, problems = build_catalog(raw_yaml_catalog(path), currency, unit, FAULTS, KINDS)
    return catalog, [str(problem) for problem in sorted(problems)]


def test_days_to_return_and_what_to_take_along(tmp_path: Path) -> None:
    """A shop's days stand for its goods, a product may have its own, and no days is not the same as none known."""
    text = (
        "shops: [{shop: mill, return_days: 30}, {shop: fair}]\n"
        "products: [{product: rug, price: 9, shop: mill, return_days: 0, take_along: the tape}]\n"
    )
    catalog, problems = read(tmp_path, text)
    assert problems == []
    assert [shop.return_days for shop in catalog.shops] == [30, None]
    assert (catalog.products[0].return_days, catalog.products[0].take_along) == (0, "the tape")
    _, problems = read(tmp_path, text.replace("return_days: 30", "return_days: a month"))
    assert len(problems) == 1
    assert "found 'a month'" in problems[0]


def remedy(folder: Path, fields: str) -> Remedy:
    """One remedy that has no problems."""
    catalog, problems = read(folder, f"remedies:\n  - {{remedy: m, kind: rug-pad, on: rug, {fields}}}\n")
    assert problems == []
    return catalog.remedies[0]


def test_the_whole_form(tmp_path: Path) -> None:
    """Every field of the manual's example is read exactly: money in cents, shares and units as fractions."""
    catalog, problems = read(tmp_path, FULL)
    assert problems == []
    assert catalog.currency == "USD"
    assert catalog.tools == (Tool(tool="drill", name="cordless drill", buy_minor=5900, hire_minor=1400),)
    assert catalog.shops == (Shop(shop="mill", delivery_minor=590, free_over_minor=6000, tax=F(33, 400)),)
    assert catalog.products == (
        Product(product="paint", name="wall paint", shop="mill", price_minor=2200, pack=F(5, 2), unit="L"),
    )
    assert catalog.remedies[2] == Remedy(
        remedy="m12",
        name="Fill and touch up the old holes",
        answers=(("f3", F(4, 5)), ("f4", F(-1, 5))),
        kind="longer-rod",
        on="win",
        set=(("rod_height", 2390.0), ("rod_width", 1900.0)),
        cost_minor=3450,
        uses=(("paint", F(7, 10)),),
        tools=("drill",),
        pick_one="g4",
        needs=("m3",),
        excludes=("m9",),
        spends=(("holes", F(2)),),
        steps=(WorkStep(minutes=30), WorkStep(minutes=30, wait_sessions=1, wait_minutes=240)),
    )


def test_what_is_not_needed_has_a_default(tmp_path: Path) -> None:
    """A name is the id, money, hours and days are 0, one person does it, a pack holds one, a tool is not owned."""
    text = """
tools: [{tool: t}]
shops: [{shop: s}]
products: [{product: p, price: 0}]
remedies: [{remedy: 7, answers: {f1: 0}}]
"""
    catalog, problems = read(tmp_path, text)
    assert problems == []
    assert catalog == Catalog(
        tools=(Tool(tool="t"),),
        shops=(Shop(shop="s"),),
        products=(Product(product="p", price_minor=0),),
        remedies=(Remedy(remedy="7", name="7", answers=(("f1", F(0)),)),),
    )
    assert (catalog.products[0].pack, catalog.tools[0].own, catalog.remedies[0].people) == (F(1), False, 1)


@pytest.mark.parametrize(
    ("typed", "steps"),
    [
        ("hours: 1", (WorkStep(minutes=60),)),
        ("hours: 0.01", (WorkStep(minutes=1),)),
        ("hours: 0.75", (WorkStep(minutes=45),)),
        ("hours: {low: 0.5, likely: 0.75, high: 1.5}", (WorkStep(minutes=55, low=30, likely=45, high=90),)),
        ("hours: {low: 0.5, likely: 0.75, high: 1}", (WorkStep(minutes=45, low=30, likely=45, high=60),)),
        ("hours: {low: 0.1, likely: 0.1, high: 0.2}", (WorkStep(minutes=8, low=6, likely=6, high=12),)),
        ("minutes: 25", (WorkStep(minutes=25),)),
        ("hours: 0", ()),
        ("people: 1", ()),
        ("steps: []", ()),
        ("steps: [{hours: 0}]", (WorkStep(minutes=0),)),
        ("steps: [{hours: 1, people: 2, text: Lift}]", (WorkStep(minutes=60, people=2, text="Lift"),)),
    ],
)
def test_steps(tmp_path: Path, typed: str, steps: tuple[WorkStep, ...]) -> None:
    """The exact mean of three figures, rounded up to whole minutes; no hours mean no steps, a listed step stays."""
    assert remedy(tmp_path, typed).steps == steps


def test_lengths_are_in_the_files_unit(tmp_path: Path) -> None:
    """Bare numbers in `unit` of the file, else of the survey; a tape's own words anywhere; lumens stay lumens."""
    line = "products: [{product: p, price: 1, what: floor lamp, width: 28, lead: 1 m 60 cm, lumens: 806, carries: 2.5}]"
    for text, unit in ((f"unit: cm\n{line}\n", "in"), (f"{line}\n", "cm")):
        catalog, problems = read(tmp_path, text, unit)
        assert problems == []
        lamp = catalog.products[0]
        assert (lamp.width, lamp.lead, lamp.lumens, lamp.carries) == (280.0, 1600.0, 806.0, 2.5)


def test_changes(tmp_path: Path) -> None:
    """Things set, added and taken away, their lengths in the file's unit, their names and words as typed."""
    made = remedy(
        tmp_path,
        "set: {width: 6 ft, pad: yes}, changes: [{item: screen, set: {bottom: 55.4, over: bench}}, {remove: old lamp}, "
        "{add: lights, item: new lamp, what: floor lamp, lumens: 1055, width: 28 cm, socket: null}, "
        "{add: furniture, item: bin, what: basket, wall: a, width: 300, depth: 300, height: 400}]",
    )
    assert made.set == (("pad", True), ("width", 1828.8))
    assert made.changes == (
        SetChange(item="screen", set=(("bottom", 55.4), ("over", "bench"))),
        SetChange(item="old lamp", remove=True),
        SetChange(
            table="lights",
            item="new lamp",
            set=(("lumens", 1055.0), ("socket", None), ("what", "floor lamp"), ("width", 280.0)),
            add=True,
        ),
        SetChange(
            table="furniture",
            item="bin",
            set=(("depth", 300.0), ("height", 400.0), ("wall", "A"), ("what", "basket"), ("width", 300.0)),
            add=True,
        ),
    )


def test_what_cannot_happen_is_no_problem(tmp_path: Path) -> None:
    """A thousand hours, a fortune, a crowd, a clash with its own needs: read, and left out later with the reason."""
    text = """
remedies:
  - {remedy: a, answers: {f1: 1}, hours: 1000, cost: 1000000, people: 40}
  - {remedy: b, answers: {f1: 1}, needs: [a], excludes: [a]}
  - {remedy: c, answers: {f1: 1}, pick_one: g, needs: [d]}
  - {remedy: d, answers: {f1: 1}, pick_one: g, spends: {anything: 9}}
tools: [{tool: t}]
"""
    assert read(tmp_path, text)[1] == []


STEP = "hours such as 0.5, or {low: 0.5, likely: 0.75, high: 1.5}"
TABLES = "openings, curtains, furniture, pictures, rugs, lights, sockets"
KNOWN = "a field that is known here"
FIELDS = "fields such as rod_width: 1900"
LENGTH = "a length such as 6' 2 1/2\", 74.5 or 188 cm"
CHANGES = "changes such as [{item: screen, set: {bottom: 554}}]"


@pytest.mark.parametrize(
    ("fields", "said"),
    [
        ("cost: 3_4.50", "found '3_4.50', wanted a price such as 12.50"),
        ("cost: 0x10", "found '0x10', wanted a price such as 12.50"),
        ("cost: true", "found yes, wanted a price such as 12.50"),
        ("cost: '12,5O'", "found '12,5O', wanted a price such as 12.50; write no commas"),
        ("cost: 12.505", "found 12.505, wanted a price such as 12.50; USD has 2 digits after the point"),
        ("cost: -1", "found -1, wanted a price such as 12.50; money cannot be below 0"),
        ("hours: soon", f"found 'soon', wanted {STEP}"),
        ("hours: -1", f"found -1, wanted {STEP}; time cannot be below 0"),
        ("hours: {low: 1, high: 2}", f"found nothing, wanted {STEP}; all three: low, likely, high"),
        (
            "hours: {low: 2, likely: 1, high: 3}",
            f"found 1, wanted {STEP}; no less than low",
        ),
        ("hours: {low: 1, likely: x, high: 3}", f"found 'x', wanted {STEP}"),
        ("hours: 1, steps: [{hours: 1}]", "found 1, wanted either steps or hours, not both"),
        ("steps: 2", "found 2, wanted a list such as [{hours: 0.5}, {hours: 1, wait_sessions: 1}]"),
        ("steps: [{wait_hours: 2}]", f"found nothing, wanted {STEP}"),
        ("steps: [{hours: 1, wait_session: 1}]", f"found 'wait_session', wanted {KNOWN}; did you mean wait_sessions?"),
        ("steps: [{hours: 1, wait_sessions: 1.5}]", "found 1.5, wanted a whole number, 0 or more"),
        (
            "steps: [{hours: 1, people: 2, help: 10}]",
            "found 10, wanted people: 1 beside it: one person works, a second one helps",
        ),
        ("steps: [{hours: 0.25, help: 20}]", "found 20, wanted no more than the 15 minutes of the step"),
        ("steps: [{hours: 1, help: half}]", "found 'half', wanted a whole number, 0 or more"),
        ("steps: [{hours: 1, people: 0}]", "found 0, wanted a number of people; 1 or more people"),
        ("people: 0", "found 0, wanted a number of people; 1 or more people"),
        ("uses: {p: -1}", "found -1, wanted pairs such as name:1.5; other:2; p: it cannot be below 0"),
        ("spends: {holes: many}", "found 'many', wanted pairs such as name:1.5; other:2; holes: that is no number"),
        ("answers: {f1: 1.5}", "found a block of keys, wanted shares of at most 1"),
        ("answers: {f2: 1}", "found 'f2', wanted the name of a listed fault"),
        ("uses: {pain: 1}", "found 'pain', wanted the name of a product; did you mean paint?"),
        ("tools: [dril]", "found 'dril', wanted the name of a tool; did you mean drill?"),
        ("needs: [mm]", "found 'mm', wanted the name of a remedy"),
        ("excludes: [n9]", "found 'n9', wanted the name of a remedy"),
        ("nmae: x", "found 'nmae', wanted a field that is known here; did you mean name?"),
        (
            "set: {rod_widht: 5}",
            f"found 'rod_widht', wanted {FIELDS}; no field of the survey is called that; did you mean rod_width?",
        ),
        ("set: {width: wide}", f"found 'wide', wanted {FIELDS}; width: {LENGTH} above 0"),
        ("changes: [{set: {bottom: 1}}]", f"found nothing, wanted {CHANGES}; each change names its thing"),
        ("changes: [{item: a, bottom: 1}]", f"found 'bottom', wanted {CHANGES}; known here: item, set"),
        ("changes: [{add: rug, item: a}]", f"found 'rug', wanted {CHANGES}; one of: {TABLES}"),
        ("changes: [{add: rugs, item: a, width: 1}]", f"found a block of keys, wanted {CHANGES}; a: depth is missing"),
        ("changes: [{remove: a, item: b}]", f"found 'item', wanted {CHANGES}; known here: remove"),
        ("changes: {item: a}", f"found a block of keys, wanted {CHANGES}; each change behind a dash"),
    ],
)
def test_what_cannot_be_read_in_a_remedy(tmp_path: Path, fields: str, said: str) -> None:
    """Each message, word for word, with the line it is about."""
    text = (
        "tools: [{tool: drill}]\nproducts: [{product: paint, price: 1}]\nremedies:\n"
        f"  - {{remedy: m, kind: rug-pad, on: rug, {fields}}}\n"
    )
    assert read(tmp_path, text)[1] == [f"catalog.yaml [line 4] {said}"]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("remedies: [{kind: rug-pad}]", "found nothing, wanted a short name, used once"),
        ("remedies: [{remedy: m}]", "found nothing, wanted answers to a listed fault, or a kind"),
        (
            "remedies: [{remedy: m, kind: rug-pat}]",
            "found 'rug-pat', wanted one of: longer-rod, rug-pad; did you mean rug-pad?",
        ),
        (
            "remedies: [{remedy: m, kind: rug-pad, set: {pad: yes}}]",
            "found a block of keys, wanted `on` beside it: the name of the thing that is set",
        ),
        ("products: [{product: p}]", "found nothing, wanted a price such as 12.50"),
        ("products: [{product: p, price: 1, pack: 0}]", "found 0, wanted a number above 0"),
        ("products: [{product: p, price: 1, shop: s}]", "found 's', wanted the name of a shop"),
        (
            "products: [{product: p, price: 1, what: lam}]",
            f"found 'lam', wanted one of: {', '.join(WHATS)}; did you mean lamp?",
        ),
        (
            "products: [{product: p, price: 1, width: 11/2}]",
            f"found '11/2', wanted {LENGTH}; 11/2 is more than a whole one; did you mean 1 1/2?",
        ),
        (
            "products: [{product: p, price: 1}, {product: p, price: 2}]",
            "found 'p' a second time, wanted each name once",
        ),
        ("products: [{product: p, price: 12,5}]", "found '12,5', wanted a point, not a comma: 12.5"),
        ("products: [{product: p, price: 1, price: 2}]", "found 'price' twice (first on line 1), wanted each key once"),
        ("products: {paint: 3}", "found 'products', wanted a list, each item behind a dash"),
        ("products: [paint]", "found 'paint', wanted fields such as product: name"),
        ("shops: [{shop: s, tax: 825%}]", "found '825%', wanted a share such as 8.25%; a share is from 0% to 100%"),
        ("shops: [{shop: s, delivery: free}]", "found 'free', wanted a price such as 12.50"),
        ("tools: [{tool: t, own: perhaps}]", "found 'perhaps', wanted yes or no"),
        ("currency: MONEY", "found 'MONEY', wanted a currency code such as EUR"),
        ("unit: yd", "found 'yd', wanted one of: in, cm, mm"),
        ("remedys: []", "found 'remedys', wanted a field that is known here; did you mean remedies?"),
    ],
)
def test_what_cannot_be_read_elsewhere(tmp_path: Path, text: str, said: str) -> None:
    """What is needed and missing, what stands twice, what nobody knows: each message word for word."""
    assert read(tmp_path, f"{text}\n")[1] == [f"catalog.yaml [line 1] {said}"]


def test_a_circle_of_needs(tmp_path: Path) -> None:
    """A circle is named whole and once, at its first remedy; who only leads to it is not blamed."""
    text = """
remedies:
  - {remedy: a, kind: rug-pad, needs: [b]}
  - {remedy: c, kind: rug-pad, needs: [d]}
  - {remedy: d, kind: rug-pad, needs: [b]}
  - {remedy: b, kind: rug-pad, needs: [c, e]}
  - {remedy: e, kind: rug-pad}
  - {remedy: f, kind: rug-pad, needs: [f]}
"""
    assert read(tmp_path, text)[1] == [
        "catalog.yaml [line 6] found b needs c needs d needs b, wanted needs without a circle",
        "catalog.yaml [line 8] found f needs f, wanted needs without a circle",
    ]


def test_json_is_read_fast_and_alike(tmp_path: Path) -> None:
    """Pure JSON text takes the fast way, with the same catalog; doubled keys send it the slow way, which tells them."""
    path = tmp_path / "catalog.yaml"
    path.write_text('{"products": [{"product": "p", "price": 12.50, "width": 148.5}], "currency": "EUR"}', "utf-8")
    raw = quick_json(path)
    assert raw is not None
    fast, problems = build_catalog(raw, "USD", "cm", FAULTS, KINDS)
    assert problems == []
    assert fast == read(tmp_path, path.read_text("utf-8"), "cm")[0]
    assert (fast.products[0].price_minor, fast.products[0].width) == (1250, 1485.0)
    path.write_text('{"products": [{"product": "p", "price": 1, "price": 2}]}', "utf-8")
    assert quick_json(path) is None
    path.write_text("products: []\n", "utf-8")
    assert quick_json(path) is None


def test_the_starter_catalog_is_sound() -> None:
    """What travels in the package is read like what a user typed; bytes with problems are an error of ours."""
    assert len(read_catalog_bytes(starter_catalog(), "catalog.yaml", "JPY").products) >= 50
    with pytest.raises(ValueError, match=r"^catalog.yaml \[line 1\] found 'x', wanted a price such as 12.50$"):
        read_catalog_bytes(b"products: [{product: p, price: x}]\n", "catalog.yaml", "EUR")
