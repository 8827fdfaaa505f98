"""For programs of one's own: a guitar read from its file, with every figure, reason, verdict and drawing.

    import gramil

    guitar = gramil.read("tarn.toml", shop="shop.toml")
    guitar["fret_position"].value         # mm, one row a fret
    guitar.why("slot_depth_setting").formula
    longer = guitar.changed({"scale.length": "650 mm"})
    gramil.shift(guitar, longer).moves
    longer.pack("out")

Lengths are in mm, angles in radians, tensions in newtons: `Figure.unit` says which. What is wrong in a file is raised
as `MakersFault`, with its line. These names stay; what lies behind them may move.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from gramil import names as n
from gramil.change.shift import Shift
from gramil.change.shift import shift as shifted
from gramil.description.problems import nearest
from gramil.description.reading import Description, ShopDescription, file_text, parse_description, read_shop
from gramil.description.writing import set_key
from gramil.drawings.marks import Drawing
from gramil.faults import MakersFault
from gramil.findings.finding import InWords, in_words
from gramil.formatter import Formatter, formatter_of
from gramil.graph import Figures
from gramil.prints.whole import dimensions_of, drawings_of, figures_of, findings_of
from gramil.reason import Reason, why
from gramil.rows import rows

if TYPE_CHECKING:
    import pandas  # type: ignore[import-untyped, import-not-found, unused-ignore]  # an extra of the reader's own


__all__ = ["Figure", "Guitar", "MakersFault", "Picture", "read", "shift"]


@dataclass(frozen=True)
class Figure:
    """One figure: its address, its value, the symbol of its unit (None for words and records), and how it is shown.

    A single number is a float; figures by fret, by string or by both are arrays, row 0 of a fret's the nut end, and
    row 0 of a string's the first at the treble.
    """

    address: str
    value: Any
    unit: str | None
    text: str

    def __float__(self) -> float:
        return float(self.value)

    def __array__(self, dtype: Any = None, copy: bool | None = None) -> NDArray[Any]:
        return np.array(self.value, dtype=dtype, copy=bool(copy))

    def __str__(self) -> str:
        return self.text


@dataclass(frozen=True)
class Picture:
    """A drawing at true scale. A notebook shows it by itself; `svg` is the same as text."""

    name: str
    title: str
    svg: str

    def _repr_svg_(self) -> str:
        return self.svg

    def save(self, path: str | Path) -> None:
        """Write the SVG to a file."""
        Path(path).write_text(self.svg, encoding="utf-8", newline="\n")


@dataclass(frozen=True)
class Guitar:
    """One instrument in one shop. Nothing in it changes: `changed` gives another."""

    text: str
    file: str
    folder: Path | None
    shop: ShopDescription
    description: Description
    figures: Figures

    @property
    def name(self) -> str:
        """The instrument's name."""
        return self.description.instrument.instrument.name

    def __getitem__(self, address: str) -> Figure:
        """The figure at an address: `slot_need`, `fret_position[7]`, `board.thickness`. Raises KeyError for none, with
        the nearest.
        """
        for written in (address, address.replace(".", "_")):
            try:
                value = self.figures.at(written)
            except KeyError:
                continue
            return Figure(written, value, self.figures.unit_at(written), self._formatter.text(written))
        near = nearest(address.partition("[")[0].replace(".", "_"), self.figures.graph.order)
        raise KeyError(f"{address}: there is no such figure{f', the nearest is {near}' if near else ''}")

    def __iter__(self) -> Iterator[str]:
        """The names of all dimensions, in the order in which they follow from one another."""
        return iter(dimensions_of(self.figures))

    def why(self, address: str) -> Reason:
        """Why a figure is what it is: formula, the same with numbers, source, and what it `follows` from."""
        return why(self.figures, self[address].address, self._formatter.text)

    @cached_property
    def findings(self) -> tuple[InWords, ...]:
        """Whether it can be made: every verdict, gravest first, in words."""
        return tuple(in_words(each, self._formatter) for each in findings_of(self.figures))

    def changed(self, keys: Mapping[str, str | float | bool]) -> "Guitar":
        """The same instrument with keys set otherwise: `{"scale.length": "650 mm"}`. A bare number is in the file's
        unit. Raises MakersFault for an unknown key, and for what cannot be.
        """
        text = self.text
        for key, value in keys.items():
            text = set_key(text, key, str(value).lower() if isinstance(value, bool) else str(value))
        return _guitar(text, self.file, self.folder, self.shop)

    @cached_property
    def drawings(self) -> Mapping[str, Picture]:
        """Every drawing by its name."""
        return {each.name: self._picture(each) for each in drawings_of(self.figures)}

    def pack(self, folder: str | Path, paper: str | None = None) -> tuple[Path, ...]:
        """Write everything that goes to the bench into a folder, whole or not at all; gives the files."""
        from gramil.pack import pack_makers, whole_pack
        from gramil.shop.operations import needed
        from gramil.shop.operations_file import lists_beside, work_with
        from gramil.writers.files import write_files

        shop_file = None if self.shop.folder is None else self.shop.folder / self.shop.file
        lists = lists_beside(shop_file, (self.folder or Path()) / self.file)
        work = needed(work_with(lists), self.description.instrument)
        sheet = paper if paper is not None else self.figures[n.shop_paper]
        content = dict(whole_pack(pack_makers(self.figures, self._formatter, work, sheet)))
        write_files(Path(folder), content, False)
        return tuple(Path(folder) / name for name in content)

    def frame(self) -> "pandas.DataFrame":
        """Every single figure as a row of a table: part, address, value, unit. Needs pandas, which is not installed
        with Gramil.
        """
        import pandas  # not among what Gramil installs

        found = [(each.part, each.address, each.value, each.unit) for each in rows(self.figures, self)]
        return pandas.DataFrame(found, columns=["part", "address", "value", "unit"])

    @cached_property
    def _formatter(self) -> Formatter:
        return formatter_of(self.figures)

    def _picture(self, drawing: Drawing) -> Picture:
        from gramil.writers.svg import svg_text

        return Picture(drawing.name, drawing.title, svg_text(drawing, self._formatter.said))


def read(file: str | Path, shop: str | Path | None = None) -> Guitar:
    """The instrument in a file, in the shop of another; a shop of common practice stands in where none is named.

    Raises MakersFault with every fault of either file.
    """
    place = Path(file)
    return _guitar(file_text(place), place.name, place.parent, read_shop(shop))


def shift(old: Guitar, new: Guitar) -> Shift:
    """What moves from one instrument to another: inputs, features, dimensions, findings and papers."""
    return shifted(old.figures, new.figures)


def _guitar(text: str, file: str, folder: Path | None, shop: ShopDescription) -> Guitar:
    description = parse_description(text, file, folder)
    return Guitar(text, file, folder, shop, description, figures_of(description, shop))
