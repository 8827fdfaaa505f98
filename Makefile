# Gramil: `make demo` builds the bundled instrument's pack; `make test` runs every test, `make quick` those of the rooms
# one works in; `make fuzz SECONDS=3600` tries inputs that nobody would write.
PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin
UV := $(shell command -v uv 2>/dev/null)

.PHONY: demo test others quick walk check published fuzz season speed format docs site keep names fonts rename clean

ifdef UV
INSTALL = uv pip install --quiet --compile-bytecode --python $(BIN)/python
MAKE_VENV = uv venv --quiet --python $(PYTHON) $(VENV)
else
INSTALL = $(BIN)/python -m pip install --quiet --disable-pip-version-check
MAKE_VENV = $(PYTHON) -m venv $(VENV) || { echo "The venv module is missing. On Debian or Ubuntu: apt install python3-venv. Then run make again."; exit 1; }
endif

$(BIN)/python:
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11))' || { echo "Gramil needs Python 3.11 or newer; set PYTHON=python3.12 or the like."; exit 1; }
	@$(MAKE_VENV)

$(VENV)/.installed: pyproject.toml constraints.txt | $(BIN)/python
	@$(INSTALL) -c constraints.txt -e .
	@touch $@

$(VENV)/.tests-installed: $(VENV)/.installed
	@$(INSTALL) -c constraints.txt -e '.[test,check]'
	@touch $@

demo: $(VENV)/.installed
	@$(BIN)/gramil demo --out out

test: $(VENV)/.tests-installed
	$(BIN)/python -m pytest -n auto

# What could differ on the other Pythons that this machine has: packs to the byte, the tests of a few rooms.
others: $(VENV)/.tests-installed
	$(BIN)/python tools/other_pythons.py

quick: $(VENV)/.tests-installed
	@$(BIN)/python tools/quick.py $(ROOM)

# Every test over all of its inputs, where `make test` takes a sample that is the same at every run (tests/walks.py).
walk: $(VENV)/.tests-installed
	GRAMIL_WALK=1 $(BIN)/python -m pytest -n auto --dist load $(ROOM)

check: $(VENV)/.tests-installed
	$(BIN)/ruff format --check .
	$(BIN)/ruff check .
	$(BIN)/mypy

format: $(VENV)/.tests-installed
	$(BIN)/ruff format .
	$(BIN)/ruff check --fix .

docs: $(VENV)/.tests-installed
	$(BIN)/python docs/build.py

# The documentation as a site that needs no network: out/site/index.html.
site: $(VENV)/.installed
	@$(INSTALL) -c constraints.txt -e '.[site]'
	$(BIN)/python tools/site.py

names: $(VENV)/.installed
	$(BIN)/python tools/names.py
	$(BIN)/python tools/completion.py
	$(BIN)/python tools/compact.py

# The faces that the bench sends, after another version of a face or for more letters.
fonts: $(VENV)/.installed
	$(BIN)/python tools/web_fonts.py

rename: $(VENV)/.tests-installed
	$(BIN)/python tools/rename.py "$(OLD)" "$(NEW)"
	$(BIN)/python tools/names.py

keep: $(VENV)/.tests-installed
	$(BIN)/python tests/drawings/keeping.py

published: $(VENV)/.installed
	$(BIN)/python tools/published.py
fuzz: $(VENV)/.tests-installed
	$(BIN)/python -W ignore -m fuzz --seconds $(or $(SECONDS),60) $(if $(SEED),--seed $(SEED))

# Guitars built in simulation over a season, some minutes a seed: make season SEEDS=10
season: $(VENV)/.tests-installed
	$(BIN)/python -W ignore -m season --seeds $(or $(SEEDS),1)

speed: $(VENV)/.tests-installed
	$(BIN)/python -m benchmarks

clean:
	rm -rf $(VENV) .venv-3.* out build dist
