"""What the household wants and allows."""
