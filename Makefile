# The menu: everything that is done with this project, read from top to bottom.
# `make` alone prints it. PYTHON names the Python to use (3.11 or later).

PYTHON ?= python3
BIN := .venv/bin
DEMO := build/demo-marenz
CODE := $(wildcard src tests bench)
# Exact or refused: here every branch must have been taken by a test.
EXACT := src/paradestate/core/*,src/paradestate/text/*,src/paradestate/chance/*

# How every test is run: on two processes, of which one that is done takes from the other.
WHOLE := -n 2 --dist worksteal -p no:benchmark

# What Python has compiled is kept even where a machine says otherwise: a test that starts the
# command would else wait each time until the whole package is compiled anew.
unexport PYTHONDONTWRITEBYTECODE

.DEFAULT_GOAL := help
.DELETE_ON_ERROR:
.PHONY: help setup demo test coverage check lint compiled bench lock clean pictures postgresql chromium

help:  ## print this menu
	@sed -n 's/^\([a-z]*\):.*  ## \(.*\)/  make \1\t\2/p' Makefile | expand -t 16

setup: .venv/stamp  ## make .venv with everything needed; costs nothing when nothing changed

.venv/stamp: requirements-dev.lock pyproject.toml tools/setup
	@PYTHON="$(PYTHON)" tools/setup

demo: setup  ## start the example force of Marenz, count it and order what it lacks
	@test -e $(DEMO) || $(BIN)/paradestate new $(DEMO) --example marenz
	$(BIN)/paradestate count $(DEMO)
	$(BIN)/paradestate order $(DEMO)
	@echo
	@echo "The force is in $(DEMO): change a number in one of its files, then run"
	@echo "    $(BIN)/paradestate count $(DEMO)"
	@echo "    $(BIN)/paradestate --help"
	@echo "or look at it in a browser:"
	@echo "    $(BIN)/paradestate serve $(DEMO)"

test: setup postgresql chromium  ## everything: lint, types, import walls, every test, coverage
	@$(MAKE) --no-print-directory --jobs 2 --output-sync=target lint compiled
	@rm -rf build/coverage && mkdir -p build/coverage
	$(BIN)/coverage run -m pytest $(WHOLE) --durations 25
	@$(BIN)/coverage combine --quiet
	$(BIN)/coverage report --include='$(EXACT)' --fail-under=100

coverage: setup postgresql chromium  ## what the tests go through of all that isn't exact, for the trend
	@rm -rf build/coverage && mkdir -p build/coverage
	$(BIN)/coverage run -m pytest $(WHOLE) --measure-everything
	@$(BIN)/coverage combine --quiet
	$(BIN)/coverage report

check: lint postgresql chromium  ## the fast half: lint, types, import walls, the tests that are not slow
	$(BIN)/pytest -n 2 -p no:benchmark -m "not slow"

# The programs of the server, which the tests of the store start for themselves.
postgresql:
	@tools/postgresql

# The browser in which the tests look at the page.
chromium:
	@tools/chromium

lint: setup  ## format, lint, types and import walls, without a test
	$(BIN)/ruff format --check $(CODE)
	$(BIN)/ruff check $(CODE)
	$(BIN)/mypy
	$(BIN)/lint-imports

# Finds the tests once, while the types are checked: what pytest compiles for it is kept, and else
# each of the processes that run them would compile all of it.
compiled: setup
	@mkdir -p build
	@$(BIN)/pytest --collect-only -qq -p no:benchmark >build/compiled.log 2>&1 || \
		{ cat build/compiled.log; exit 1; }

SEEDS ?= 20
bench: setup postgresql chromium  ## how long things take, for the trend (hours; with SEEDS=1 minutes)
	$(BIN)/pytest bench
	$(BIN)/python -m bench.page
	$(BIN)/python -m bench.table_page
	$(BIN)/python -m bench.carry_file
	$(BIN)/python -m bench.large_orders --seeds $(SEEDS)

pictures: setup chromium  ## every page as a picture: build/pictures, and a few for the docs
	$(BIN)/python -m tests.web.browser.pictures

LOCK := uv pip compile pyproject.toml --quiet --universal --generate-hashes \
	--no-emit-index-url --no-header --python-version 3.11 \
	--extra ods --extra server --extra cluster
lock:  ## write the lock files anew from pyproject.toml (needs uv)
	@command -v uv >/dev/null || { echo "make lock needs uv, which is not part of this project: install it, then run this again." >&2; exit 1; }
	$(LOCK) --output-file requirements.lock
	$(LOCK) --extra dev --output-file requirements-dev.lock

clean:  ## remove everything that was made here
	rm -rf .venv build dist src/*.egg-info .benchmarks .hypothesis
	rm -rf .import_linter_cache .mypy_cache .pytest_cache .ruff_cache
	find src tests bench -name __pycache__ -prune -exec rm -rf {} +
