from __future__ import annotations
def pair_rows(asked, made): return [], []
