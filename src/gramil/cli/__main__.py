"""`python -m gramil.cli` does what `gramil` does."""

from gramil.cli import main

main()
