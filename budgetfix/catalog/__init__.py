"""Products, tools, shops, and the bill for what is chosen."""
