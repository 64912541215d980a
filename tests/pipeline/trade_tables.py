"""The trade's tables, written out by hand in `trade_rules.md`; the sources of their rows, the weights of profiles."""

from __future__ import annotations

from pathlib import Path

TABLES = Path(__file__).parent / "trade_rules.md"

ROWS = {
    "A1": "NUREG-0700 rev. 3, Table 11.4",
    "A3": "NUREG-0700 rev. 3, Table 11.4",
    "A5": "ANSUR II, 2012 survey",
    "A6": "ANSUR II, 2012 survey",
    "A10": "City University of Hong Kong",
    "C1": "2010 ADA Standards 403.5.1",
    "C3": "2010 ADA Standards 404.2.3 and UFAS 4.13.5",
    "C4": "Fair Housing Accessibility Guidelines, 24 CFR ch. I, Requirement 3",
    "C7": "ABA and ADA Standards 307.2",
    "C9": "ABA and ADA Standards 307.4",
    "C10": "307.5",
    "C11": "2010 ADA Standards 308.2",
    "C14": "Approved Document M (2013) 7.5b",
    "C15": "HUD, Manual of Acceptable Practices vol. 4 (1973)",
    "C16": "HUD, Manual of Acceptable Practices vol. 4 (1973)",
    "C20": "classroom handout Arranging Space",
    "C21": "classroom slides on living areas",
    "C22": "Hall, The Hidden Dimension, 1966",
    "L1": "IES Lighting Handbook, Table 10-7",
    "L2": "IES Lighting Handbook, Table 10-7",
    "L6": "CIBSE",
    "L7": "CIBSE",
    "L8": "lighting design notes",
    "P19": "Math in the Workplace: Homemaker",
    "P20": "Extension Circular A-249, How to Make Draperies, 1956",
    "P22": "US Navy manual NAVEDTRA 14065",
    "P23": "general hanging advice",
    "S5": "16 CFR 1261.2 via ASTM F2057-23",
    "S6": "ANSI/WCMA A100.1-2018 4.3.1",
    "S7": "NFPA 70 (2020) 400.12",
    "S8": "city fire-department messages",
    "S9": "State of Vermont fire code highlight A61, from NFPA 72",
    "S10": "NFPA 72, 17.7.3.2.1",
    "T1": "geometry",
    "T5": "SMPTE EG 18",
    "T6": "a column for installers",
    "T7": "NUREG-0700 rev. 3",
    "T8": "NUREG-0700 rev. 2",
}
"""The published rows that rules cite, and the source that a page must name beside each."""

LEFT = {
    "alarm-crowded": "S9 S10",
    "art-off-height": "P22",
    "bed-side-tight": "C16",
    "chairs-boxed-in": "C15 C16",
    "door-cannot-open": "C3 C4",
    "front-blocked": "C11 C16",
    "juts-into-route": "C7",
    "panels-skimpy": "P19 P20",
    "room-dim": "L1",
    "screen-too-near-or-far": "T5",
    "seats-too-far-apart": "C15",
    "tall-piece-loose": "S5",
    "walkway-too-narrow": "C1",
}
"""Rules whose band leaves a published row: their page says so, and why."""

LISTING = {
    "0": """screen-off-eye-level screen-too-near-or-far screen-seen-sideways seat-turns-the-neck screen-glare
        console-too-narrow console-flank-flat cables-on-show front-blocked seat-dim-for-reading
        nightstand-off-height""",
    "3/2": """rod-hung-low rod-too-narrow panels-skimpy hem-off-floor rods-out-of-line window-bare room-dim
        one-light-only pendant-off-height pendant-off-center bedroom-light-not-at-bed""",
    "6/5": """floor-bare rug-misses-seats rug-shorter-than-sofa rug-across rug-tight-to-walls rug-catches-chairs
        rug-under-bed table-out-of-reach table-off-length table-off-height seat-without-table all-straight-edges
        all-against-walls seats-too-far-apart sofa-too-big""",
    "5/3": "lamp-colors-mixed",
}
"""What the listing profile makes of the weights; all others stay as they are."""
LISTING_ONLY = "floor-left-empty personal-things room-purpose-unclear camera-sees-back bed-undressed"
STAYS = "damp-gap pendant-off-height"
"""What still counts, once, when a home is handed back; holes count three times, all other looks are off."""


def rows() -> list[tuple[str, str, str, str, list[str], list[str]]]:
    """(section, slug, weight, family or S, published rows, words of the page) of every line."""
    found, section = [], ""
    for line in TABLES.read_text(encoding="utf-8").splitlines():
        cells = [cell.strip() for cell in line.split("|")[1:-1]]
        if line.startswith("## "):
            section = line.removeprefix("## ")
        elif cells and cells[0] not in ("rule", "---"):
            slug, weight, family, published, words = cells
            found.append((section, slug, weight, family, published.split(), [one.strip() for one in words.split(";")]))
    return found
