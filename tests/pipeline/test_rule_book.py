"""The rule book against the trade's tables, and the report that is made of it."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest

from budgetfix.base.twin import Twin
from budgetfix.inspection.registry import RULES, SECTIONS
from budgetfix.inspection.rule import Rule
from budgetfix.inspection.words import page
from budgetfix.pipeline.manual import page_of, rule_book, rules_objects
from budgetfix.remedies.registry import KINDS
from tests.make_reports import RULE_BOOK
from tests.pipeline.trade_tables import LEFT, LISTING, LISTING_ONLY, ROWS, STAYS, rows

BY_SLUG = {rule.slug: rule for rule in RULES}
ROW = r"\b[ACLPST]\d+\b(?!\.\d)"
"""How a published row is cited; a standard such as A100.1 is none."""
KEYS = "slug measures unit band aim glaring weight family safety profiles basis source"


def text_of(slug: str) -> str:
    """A page with its lines joined, as somebody reads it."""
    return " ".join(page(BY_SLUG[slug]).split())


def test_the_book_holds_every_rule_of_the_trade_and_no_other() -> None:
    """79 rules in ten sections, in the trade's own order."""
    told = [(section, rule.slug) for section, rules in SECTIONS for rule in rules]
    assert told == [(section, slug) for section, slug, *_ in rows()]
    assert len(RULES) == 79


@pytest.mark.parametrize(
    ("section", "slug", "weight", "family", "published", "words"), rows(), ids=lambda one: str(one)
)
def test_a_rule_says_what_its_row_says(
    section: str, slug: str, weight: str, family: str, published: list[str], words: list[str]
) -> None:
    """Weight, family, published rows with their sources in full, and every figure of the row on the page."""
    rule, text = BY_SLUG[slug], text_of(slug)
    assert (f"{float(rule.weight):g}", "S" if rule.safety else rule.family or "") == (weight, family), section
    for part in words:
        assert part in text, part
    cited = set(re.findall(ROW, f"{rule.basis} {text.partition('Basis:')[2]}"))
    assert cited >= set(published)
    for row in sorted(cited & set(ROWS)):
        assert ROWS[row] in text, row
    assert cited <= set(ROWS) | {"A61"}
    assert published or "common practice" in rule.basis


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.slug)
def test_every_page_holds_what_a_stranger_needs(rule: Rule) -> None:
    """What is measured and how, sound and glaring, why, the basis; both units; short enough for one screen."""
    text, lines = text_of(rule.slug), (page_of(rule.slug) or "").splitlines()
    places = [text.find(part) for part in (" How to measure. ", " Measured: ", " Why: ", " Basis: ", " Weight ")]
    assert -1 not in places
    assert places == sorted(places)
    for part in ("Sound: ", "Glaring: ", "The brief may switch it "):
        assert part in text, part
    given = rule.aim_words or (rule.band.aim != (None, None) and rule.unit != "yes")
    assert ("Aim: " in text) == bool(given)
    assert len(lines) <= 38
    edges = [rule.band.low, rule.band.high, *(edge for _, band in rule.shown for edge in (band.low, band.high))]
    if any(isinstance(edge, Twin) for edge in edges) and not rule.sound_words:
        assert re.search(r"Sound: [-/\d ]+(to [-/\d ]+)?in \([-\d]+( to [-\d]+)? mm\)", text)
    else:
        assert re.search(r"Sound: \S+", text)


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.slug)
def test_no_figure_stands_twice_on_a_page(rule: Rule) -> None:
    """Sound, aim and glaring are printed from the rule itself: its own text has none of them."""
    prose = text_of(rule.slug).partition(" Measured: ")[0] + text_of(rule.slug).partition(" Why: ")[2]
    assert not re.search(r"\b(Sound|Aim|Glaring): ", prose)
    sound = re.search(r"Sound: (\S+ (?:to \S+ )?in \([^)]*\))", text_of(rule.slug))
    assert sound is None or rule.sound_words or sound.group(1) not in prose


def test_inches_alone_are_never_left_standing() -> None:
    """In the way to measure, an inch figure has its millimetres beside it, or said it just before."""
    for rule in RULES:
        how = text_of(rule.slug).partition(" Measured: ")[0]
        for inches in re.findall(r"(\d+) in(?![\w ]*\(\d|, \d+ mm| \(|[a-z])", how):
            assert re.search(rf"\b{inches} (in|to \d+ in) \(|{inches} in, \d+ mm", how), f"{rule.slug}: {inches} in"


@pytest.mark.parametrize("slug", sorted(LEFT))
def test_where_a_band_leaves_a_published_row_it_says_so(slug: str) -> None:
    """The page says that it leaves the row on purpose, and a reason follows."""
    basis = text_of(slug).partition(" Basis: ")[2].partition(" Weight ")[0]
    left = re.search(r"(?i)our (?:band|rule|28 in) leaves .*?on purpose(.*)", basis)
    assert left is not None
    assert len(left.group(1).split()) >= 5
    for row in LEFT[slug].split():
        assert re.search(rf"\b{row}\b", basis), row


def test_profiles_are_the_trades() -> None:
    """Listing: screen, fronts, reading and nightstand heights off, windows and light x 1.5, rugs and seats x 1.2.

    Handing back: holes x 3, own cloth off, looks mostly off. Hazards know no profile (common practice).
    """
    listing = {slug: Fraction(factor) for factor, slugs in LISTING.items() for slug in slugs.split()}
    for rule in RULES:
        if rule.safety:
            assert not rule.profiles, rule.slug
            continue
        stays = rule.slug in STAYS.split()
        back = Fraction(3) if rule.slug == "old-holes-show" else Fraction(1) if stays else Fraction(0)
        assert rule.profiles.get("listing", Fraction(1)) == listing.get(rule.slug, Fraction(1)), rule.slug
        assert rule.profiles.get("handing-back", Fraction(1)) == back, rule.slug
        assert rule.profiles.get("living", Fraction(1)) == (rule.slug not in LISTING_ONLY.split()), rule.slug


def test_every_rule_is_listed_for_programs() -> None:
    """`rules --json`: all agreed keys of all rules; the source is the page's, in full, the basis names its rows."""
    made = [one for one in rules_objects(None) if isinstance(one, dict)]
    assert [one["slug"] for one in made] == [slug for _, slug, *_ in rows()]
    for one in made:
        assert set(one) >= set(KEYS.split())
        rule = BY_SLUG[str(one["slug"])]
        source = str(one["source"])
        assert source.split() == page(rule).partition("Basis:")[2].partition("\n\n")[0].split()
        assert rule.basis
        for row in re.findall(ROW, rule.basis):
            assert ROWS[row] in source
    narrow = next(one for one in made if one["slug"] == "console-too-narrow")
    assert narrow["band"] == {"mm": [200.0, None], "in": [pytest.approx(203.2), None]}
    assert narrow["aim"] == [300.0, None]
    assert narrow["profiles"] == {"listing": 0.0, "handing-back": 0.0}


def test_the_book_has_its_contents_and_every_page_once() -> None:
    """A table for each section, then one heading a page, rules first and kinds last; a link leads to each."""
    text = rule_book()
    headings = re.findall(r"(?m)^## (\S+)$", text)
    names = [*(rule.slug for rule in RULES), *(kind.kind for kind in KINDS)]
    assert headings == ["Contents", *names]
    assert re.findall(r"\]\(#(\S+)\)", text) == names
    for rule in RULES:
        kin = "S" if rule.safety else rule.family or ""
        assert f"| [{rule.slug}](#{rule.slug}) | {rule.title} | {float(rule.weight):g} | {kin} |" in text
        assert f"**{rule.title}**" in text


def test_the_rule_book_in_the_reports_is_fresh() -> None:
    """What stands in `reports/` is what the tool makes today; `make reports` writes it anew."""
    assert RULE_BOOK.read_text(encoding="utf-8") == rule_book(), "rules.md is stale: make reports"
