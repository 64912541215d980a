"""`python -m budgetfix`."""

from budgetfix.cli import main

if __name__ == "__main__":
    main()
