"""`python -m gramil`: the command line, where the folder of installed programs is not on the path."""

from gramil.cli import main

if __name__ == "__main__":
    main()
