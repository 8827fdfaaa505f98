"""An import under way: what rows of its files are called, and every fault found so far."""

from dataclasses import dataclass, field

from gramil.doorway.file_rows import FileRow
from gramil.faults import Fault, MakersFault
from gramil.store.opening import Store
from gramil.store.table_forms import NAMED, names_of_rows

MOST_FAULTS = 100
"""More faults than this are counted, not told."""


@dataclass
class Import:
    """The rows' numbers, by table and by what the file calls each row, and the faults, as far as the import has
    come.
    """

    store: Store
    file: str
    numbers: dict[str, dict[str, int]] = field(default_factory=dict)
    faults: list[Fault] = field(default_factory=list)

    def fault(self, row: FileRow, table: str, what: str, remedy: str = "") -> None:
        """Notes what is wrong with a row."""
        self.faults.append(Fault(row.line, table, what, "", remedy, self.file))

    def number(self, table: str, called: str) -> int | None:
        """The number of the row that the file calls by this name, or None if there is none."""
        if table not in self.numbers:
            names = names_of_rows(self.store, table) if table in NAMED else {}
            self.numbers[table] = {name: number for number, name in names.items()}
        return self.numbers[table].get(called)

    def call(self, table: str, called: str, number: int) -> None:
        """Notes what the file calls a row that was just added."""
        self.number(table, called)
        self.numbers[table][called] = number

    def settle(self) -> None:
        """Raises MakersFault if any row had a fault."""
        if len(self.faults) > MOST_FAULTS:
            more = Fault(what=f"and {len(self.faults) - MOST_FAULTS} more faults", file=self.file)
            raise MakersFault([*self.faults[:MOST_FAULTS], more])
        if self.faults:
            raise MakersFault(self.faults)
