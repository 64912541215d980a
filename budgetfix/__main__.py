"""`python -m budgetfix`."""

from budgetfix.cli import main

main()
