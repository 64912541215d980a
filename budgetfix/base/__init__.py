"""Units, money, places in files, problems: what every other folder speaks in."""
