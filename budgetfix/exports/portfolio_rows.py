"""What several jobs buy, rolled up over all of them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from budgetfix.exports.plan_screen import WITHOUT_SHOP
from budgetfix.outcome.book import MoneyLine
from budgetfix.outcome.portfolio import Portfolio

if TYPE_CHECKING:
    import pandas as pd

KEY = ["order", "place", "kind", "product", "name", "label"]


@dataclass(frozen=True, slots=True)
class Bought:
    """One line over all jobs. `packs`: by job, in the order of the houses, 0 where it has none; of lines without packs
    None. `price_minor` None: the jobs pay different prices.
    """

    place: str
    name: str
    label: str
    goods: bool
    packs: tuple[int, ...] | None
    price_minor: int | None
    line_minor: int
    each_minor: tuple[int, ...]
    """The line of each job."""


def money_table(portfolio: Portfolio) -> pd.DataFrame:
    """Every line of money of every job: job, place, kind, product, name, label, packs, price, line (minor units)."""
    import pandas as pd

    rows = [
        {
            "house": number,
            "order": 0 if line.kind == "product" else 1,
            "place": _place(line, house.stock),
            "kind": line.kind,
            "product": line.product or "",
            "name": line.name if line.kind == "product" or line.kind in ("tool", "hire") else _whole(line.kind),
            "label": line.label,
            "packs": line.packs or 0,
            "price": -1 if line.unit_price_minor is None else line.unit_price_minor,
            "line": line.line_minor,
        }
        for number, house in enumerate(portfolio.houses)
        for line in house.book.money
    ]
    columns = ["house", *KEY, "packs", "price", "line"]
    return pd.DataFrame(rows, columns=columns)


def _place(line: MoneyLine, stock: tuple[str, ...]) -> str:
    if not line.shop_name and line.product in stock:
        return "our stock"
    return line.shop_name or WITHOUT_SHOP.get(line.kind, "other goods")


def _whole(kind: str) -> str:
    """What lines of one sort that every job words for itself are called together."""
    names = {
        "delivery": "Delivery",
        "tax": "Tax",
        "labour": "Pay for the work",
        "fixed": "Fixed costs",
        "remedy": "Remedies, besides their goods",
    }
    return names.get(kind, kind)


def bought(portfolio: Portfolio) -> tuple[Bought, ...]:
    """Goods by shop, then what is no goods; the lines add up to what all jobs spend."""
    table = money_table(portfolio)
    if table.empty:
        return ()
    packs = table.pivot_table(index=KEY, columns="house", values="packs", aggfunc="sum", fill_value=0)
    lines = table.pivot_table(index=KEY, columns="house", values="line", aggfunc="sum", fill_value=0)
    prices = table.groupby(KEY)["price"].agg(["min", "max"])
    every = range(len(portfolio.houses))
    packs, lines = packs.reindex(columns=every, fill_value=0), lines.reindex(columns=every, fill_value=0)
    found = []
    for key in packs.index:
        order, place, _, _, name, label = key
        low, high = (int(one) for one in prices.loc[key])
        each = tuple(int(one) for one in lines.loc[key])
        counts = tuple(int(one) for one in packs.loc[key])
        price = low if low == high and low >= 0 else None
        found.append(Bought(place, name, label, order == 0, counts if order == 0 else None, price, sum(each), each))
    return tuple(found)


def shop_sums(portfolio: Portfolio) -> list[tuple[str, int]]:
    """(shop or sort of money, minor units), by name."""
    table = money_table(portfolio)
    return [(str(place), int(total)) for place, total in table.groupby("place")["line"].sum().sort_index().items()]
