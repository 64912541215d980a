# make demo: a fresh machine plans three households.  make test: the gate.  make check: its quick half.
# Needs python3 (3.11 or newer, with venv), make and, for one test, git.

SHELL := /bin/sh
BIN := .venv/bin
PIP := $(BIN)/python -m pip --quiet --disable-pip-version-check
PYTHONS := python3.14 python3.13 python3.12 python3.11 python3
DEMO := reports/demo

# For `make trials`: SEED=7 tries other cases, ONLY=kills runs one of them, TRIES=100 fewer.
SEED := 20261126

.PHONY: help demo test check trials mutants reports bench clean
.DELETE_ON_ERROR:

help:
	@echo "make demo     sets up .venv, plans a renter's room, a stager's house and a couple's, names the files to open"
	@echo "make test     sets up .venv, runs every check and test: GATE OPEN or what to fix first"
	@echo "make check    the quick half of make test"
	@echo "make trials   tries to break the tool, counted: broken and hostile files, kills, cross-checks, laws, limits"
	@echo "make mutants  changes the code in small ways, and counts the changes that no test notices"
	@echo "make reports  writes what stands in reports/ anew"
	@echo "make bench    measures the chooser for about six minutes, into reports/choice.md"
	@echo "make clean    takes away .venv, caches and the demo's output"

# The newest python3 that runs, is 3.11 or newer and can make environments.
.venv/made:
	@found=; bare=; \
	for python in $(PYTHONS); do \
	  $$python -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null || continue; \
	  if $$python -c 'import ensurepip, venv' 2>/dev/null; then found=$$python; break; fi; \
	  bare=$$python; \
	done; \
	if [ -x $(BIN)/python ] && $(BIN)/python -m pip --version >/dev/null 2>&1; then \
	  echo "Using the .venv that is already here."; \
	elif [ -n "$$found" ]; then \
	  echo "Making .venv with $$($$found --version) ($$found) ..."; $$found -m venv .venv; \
	elif [ -n "$$bare" ]; then \
	  echo "$$bare has no venv or ensurepip. On Debian and its kin: apt-get install python3-venv" >&2; exit 1; \
	else \
	  echo "No Python 3.11 or newer was found (looked for: $(PYTHONS))." >&2; exit 1; \
	fi; \
	touch $@

.venv/ready-to-run: .venv/made pyproject.toml
	@echo "Installing budgetfix and what it needs into .venv (about a minute, once) ..."
	@$(PIP) install --editable .
	@touch $@

.venv/ready-to-test: .venv/made pyproject.toml
	@echo "Installing budgetfix and what its tests need into .venv (about a minute, once) ..."
	@$(PIP) install --editable '.[dev]'
	@touch $@ .venv/ready-to-run

# The renter's plan first, on the screen; then the stager's and the couple's, both at once. 4: a plan is there, unproven.
demo: .venv/ready-to-run
	@echo "Copying the renter's room into $(DEMO)/renter, inspecting it, planning it ..."
	@rm -rf $(DEMO)
	@mkdir -p $(DEMO)
	@$(BIN)/budgetfix demo $(DEMO)/renter --scenario renter || [ $$? -eq 4 ]
	@echo
	@echo "Planning the stager's two rooms and the couple's as well (a minute or two) ..."
	@$(BIN)/budgetfix demo $(DEMO)/stager --scenario stager --quiet & stager=$$!; \
	$(BIN)/budgetfix demo $(DEMO)/couple --scenario couple --quiet & couple=$$!; \
	{ wait $$stager || [ $$? -eq 4 ]; } && { wait $$couple || [ $$? -eq 4 ]; }
	@for name in renter stager couple; do \
	  test -f $(DEMO)/$$name/plan.html || { echo "No plan was written for the $$name." >&2; exit 1; }; \
	done
	@echo "Open $(DEMO)/renter/plan.html    what to buy and to do, and a note to the landlord beside it"
	@echo "Open $(DEMO)/stager/quote.html   what the client reads; plan.html is the stager's own"
	@echo "Open $(DEMO)/couple/plan.html    who does what when, and what each gives up"
	@echo "Then tick what is done in $(DEMO)/renter/plan.xlsx, and: .venv/bin/budgetfix replan $(DEMO)/renter"

# step NAME COMMAND...: runs it, shows what it said if it failed, and notes the first that did.
STEPS = first=; notes=; \
  note() { notes="$$notes$$(printf '%-16s %-6s %3d s' "$$1" "$$2" $$(( $$(date +%s) - began )))\n"; }; \
  step() { name=$$1; shift; began=$$(date +%s); \
    if said=$$("$$@" 2>&1); then note "$$name" ok; \
    else note "$$name" FIX; first="$${first:-$$name}"; echo "--- $$name"; echo "$$said"; fi; }; \
  tests() { began=$$(date +%s); \
    if $(BIN)/python -m pytest -n auto --dist loadgroup "$$@"; then note pytest ok; else note pytest FIX; first="$${first:-pytest}"; fi; }
LOOKS = step "ruff format" $(BIN)/ruff format --check .; \
  step "ruff check" $(BIN)/ruff check .; \
  step "mypy --strict" $(BIN)/mypy; \
  step "imports" $(BIN)/lint-imports --no-logo
VERDICT = missing=; \
  command -v soffice >/dev/null || missing=LibreOffice; \
  command -v pdftotext >/dev/null || missing="$${missing:+$$missing, }poppler"; \
  command -v chromium >/dev/null || command -v chromium-browser >/dev/null || missing="$${missing:+$$missing, }Chromium"; \
  printf "$$notes"; \
  if [ -n "$$missing" ]; then missing=" (NOT RUN: tests that need $$missing)"; fi; \
  if [ -n "$$first" ]; then echo "GATE SHUT: fix $$first first$$missing"; exit 1; fi; \
  echo "GATE OPEN$$missing"

test: .venv/ready-to-test
	@$(STEPS); $(LOOKS); tests --durations=3; $(VERDICT)

check: .venv/ready-to-test
	@$(STEPS); $(LOOKS); tests -m "not slow"; $(VERDICT)

# Attempts to break the tool, in numbers; the gate runs a few of each.
trials: .venv/ready-to-test
	@$(BIN)/python -m tests.trials --seed $(SEED) $(if $(ONLY),--only $(ONLY)) $(if $(TRIES),--tries $(TRIES))

# Small changes of the code that some test should notice; PART=bill is the shortest.
mutants: .venv/ready-to-test
	@$(BIN)/python -m tests.mutants $(if $(PART),--part $(PART))

# The sample report of the renter, made anew; the gate compares it with a fresh run.
reports: .venv/ready-to-test
	@$(BIN)/python -m tests.make_reports

# How long choosing takes against other ways of choosing, in ratios; no test, since times depend on the machine.
bench: .venv/ready-to-test
	@$(BIN)/python -m tests.benchmarks.bench_choice --write reports/choice.md

clean:
	rm -rf .venv dist build reports/demo .mypy_cache .ruff_cache .pytest_cache .hypothesis .import_linter_cache
	find budgetfix tests catalog_demo -name __pycache__ -type d -prune -exec rm -rf {} +
