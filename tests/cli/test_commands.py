"""Whole commands on small jobs: what is printed where, the exit code, and what is written."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import Result
from typer.testing import CliRunner

from budgetfix import __version__
from budgetfix.cli.app import app
from budgetfix.inspection.registry import RULES
from budgetfix.remedies.registry import KINDS
from tests.pipeline.listed_job import one_each, write_job
