"""Writes the large data files of the package as JSON too, which is read much faster: part of `make names`; a test
keeps them true.
"""

from gramil.package_data import COMPACT, DATA, compact

if __name__ == "__main__":
    for name in COMPACT:
        (DATA / "compact" / f"{name}.json").write_text(compact(name), encoding="utf-8", newline="\n")
