"""The page `plan.html`: one file that opens anywhere, asks no network, and keeps ticks where the viewer lets it."""
