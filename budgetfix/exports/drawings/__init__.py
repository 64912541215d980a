"""Drawings of what a plan changes: each room from above, each changed wall from the front, before and after.

A drawing is SVG text made of attributes only (no style, no script, nothing fetched), so that a page with a strict
content policy may hold it; `raster` makes a picture of it for workbooks.
"""
