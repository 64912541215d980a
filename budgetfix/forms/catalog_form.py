"""The catalog as a form: the sheets of its workbook, and every field of every table."""

from __future__ import annotations

from budgetfix.catalog.models import WHATS
from budgetfix.forms.column import Column
from budgetfix.forms.survey_form import FORM_OF, Sheet
from budgetfix.room.items import TABLES

REMEDIES = (
    Column("remedy", "Remedy", "short, used once", needed=True, wide=12),
    Column("name", "What to do", "in words", wide=44),
    Column("kind", "Kind", "see rules --kinds", wide=16),
    Column("on", "On", "a name from the survey", wide=18),
    Column("answers", "Answers", "listed fault:share", wide=18),
    Column("cost", "Cost", "what no product covers", "number"),
    Column("cost_low", "Cost low", "if you are lucky", "number"),
    Column("cost_high", "Cost high", "if you are not", "number"),
    Column("hours", "Hours", "if it is one step", "number"),
    Column("uses", "Uses", "product:units", wide=20),
    Column("tools", "Tools", "separated by ;", wide=14),
    Column("pick_one", "Pick one of", "same word = one of these", wide=14),
    Column("needs", "Needs", "other remedies", wide=14),
    Column("excludes", "Not with", "other remedies", wide=14),
    Column("spends", "Takes", "holes:2; kg:12", wide=16),
    Column("people", "People", "hands at once", "count", wide=9),
    Column("set", "Then measures", "field = value; ...", wide=36),
    Column("changes", "Also changes", "thing: field = value", wide=36),
    Column("cares", "Mind", "separated by ;", wide=24),
    Column("phase", "Phase", "1 safety ... 13 sweep", "count", wide=9),
    Column("client", "In a quote", "words for the client", wide=36),
)
STEPS = (
    Column("remedy", "Remedy", "whose step", needed=True, wide=12),
    Column("text", "Step", "in words", wide=44),
    Column("low", "Minutes low", "if all goes well", "number"),
    Column("likely", "Minutes likely", "as a rule", "number", needed=True, wide=13),
    Column("high", "Minutes high", "if it goes badly", "number", wide=12),
    Column("wait_sessions", "Wait sessions", "1 = the next one", "count", wide=13),
    Column("wait_hours", "Wait hours", "drying, say", "number"),
    Column("people", "People", "hands at once", "count", wide=9),
    Column("from_stock", "From stock", "no = nothing of it yet", "yes-no", wide=12),
    Column("help", "Helper minutes", "a 2nd pair of hands, at its start", "count", wide=15),
)
PRODUCTS = (
    Column("product", "Product", "short, used once", needed=True, wide=18),
    Column("name", "Name", "to ask for", wide=34),
    Column("what", "What", "lets budgetfix pick it", "choice", choices=WHATS, wide=14),
    Column("label", "Size on the label", "as the shop prints it", wide=26),
    Column("shop", "Shop", "see Shops", wide=10),
    Column("price", "Price", "of one pack", "number", needed=True),
    Column("price_low", "Price low", "if you are lucky", "number"),
    Column("price_high", "Price high", "if you are not", "number"),
    Column("pack", "In a pack", "units", "number", wide=10),
    Column("unit", "Unit", "piece, L, pair", wide=9),
    Column("on_hand", "At home", "units", "number", wide=9),
    Column("lead_days", "Days to come", "0 = take it along", "count", wide=12),
    Column("return_days", "Days to return", "if not the shop's", "count", wide=13),
    Column("take_along", "Take along", "to the shop", wide=24),
    Column("example", "Example price", "ours, not a shop's", "yes-no", wide=13),
    Column("width", "Width", "real size", "length"),
    Column("width_to", "Width up to", "if it extends", "length"),
    Column("depth", "Depth", "real size", "length"),
    Column("height", "Height", "real size", "length"),
    Column("drop", "Drop", "of a panel", "length"),
    Column("heading", "Heading", "eyelet, tab, pleat", wide=10),
    Column("cloth", "Cloth", "lined, sheer", wide=10),
    Column("round", "Round", "any curve", "yes-no", wide=8),
    Column("lumens", "Lumens", "", "number"),
    Column("kelvin", "Kelvin", "", "number"),
    Column("lead", "Lead", "lamp to plug", "length"),
    Column("carries", "Carries", "kg", "number"),
    Column("stock", "In our store", "packs there are", "count", wide=12),
    Column("place", "Stands at", "bay, shelf", wide=12),
    Column("weight_kg", "Pack weighs", "kg", "number", wide=11),
    Column("free_from", "Free from", "such as 2026-06-04", wide=12),
    Column("free_until", "Free until", "such as 2026-07-04", wide=12),
    Column("term_days", "Price is for", "days; empty = for good", "count", wide=12),
    Column("least_days", "Least charged", "days", "count", wide=12),
)
TOOLS = (
    Column("tool", "Tool", "short, used once", needed=True, wide=16),
    Column("name", "Name", "in words", wide=28),
    Column("own", "Own", "have it already?", "yes-no", wide=10),
    Column("buy", "Buy for", "price", "number"),
    Column("hire_per_session", "Hire for", "price a session", "number", wide=14),
)
SHOPS = (
    Column("shop", "Shop", "short, used once", needed=True, wide=16),
    Column("name", "Name", "in words", wide=28),
    Column("delivery", "Delivery", "once an order", "number"),
    Column("free_over", "Free from", "of goods", "number"),
    Column("tax", "Tax", "such as 8.25%", "percent"),
    Column("markup", "Mark-up", "on each line, to a client", "percent", wide=13),
    Column("return_days", "Days to return", "once it has come", "count", wide=13),
)

CATALOG_SHEETS = (
    Sheet("Products", "products", "What the shops sell, with real sizes. A bare number is in the unit named below.",
          PRODUCTS, 90),
    Sheet("Remedies", "remedies", "Your own ideas. Leave it empty to let budgetfix find what the products can do.",
          REMEDIES, 40),
    Sheet("Steps", "steps", "Minutes for each step of a remedy, in order. Leave it empty if Hours says it all.",
          STEPS, 60),
    Sheet("Tools", "tools", "Tools that remedies name: owned, bought once, or hired by the session.", TOOLS, 16),
    Sheet("Shops", "shops", "Delivery once an order, tax on the goods.", SHOPS, 12),
)  # fmt: skip
STOCK_FIELDS = frozenset(
    {"stock", "place", "weight_kg", "free_from", "free_until", "term_days", "least_days", "from_stock", "client"}
)
RANGE_FIELDS = frozenset({"price_low", "price_high", "cost_low", "cost_high"})
"""Low and high, beside the likely price."""
OPTIONAL_FIELDS = (STOCK_FIELDS, RANGE_FIELDS)
"""Columns that a sheet has only where some row fills one of their group."""
CATALOG_FORM: dict[str, tuple[Column, ...]] = {sheet.key: sheet.columns for sheet in CATALOG_SHEETS}
CATALOG_TOP = (
    Column("currency", "Currency", "three letters"),
    Column("unit", "A bare number means", "in, cm or mm", "choice", choices=("in", "cm", "mm")),
)

FIELDS_OF: dict[str, dict[str, Column]] = {
    table: {column.field: column for column in FORM_OF[table] if column.model} for table in TABLES
}
"""The survey's own fields that a remedy may set, by table and name."""
