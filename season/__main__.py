"""`python -m season [--seeds 2] [--weeks 40] [--outlook] [--machines]`: guitars built in invented air."""

import argparse
import sys
import tempfile
from datetime import UTC, datetime
from pathlib import Path

from gramil.store.opening import create_store
from season.building import NAMES, Season, held, moved, moved_of_itself

NEVER = datetime.max


def main() -> int:
    asked = _asked()
    for seed in range(asked.first, asked.first + asked.seeds):
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder) / "shop.gramil"
            store = create_store(path).__enter__()
            season = Season(
                path,
                store,
                datetime(2026, 2, 2, 8, 30, tzinfo=UTC),
                seed,
                outlook=asked.outlook,
                machines=asked.machines,
            )
            found = season.run(asked.weeks)
            season.store.connection.close()
        within, of = held(found)
        planned = sum(found.shares) / max(1, len(found.shares))
        print(f"seed {seed}: {len(found.finished)} of {len(NAMES)} finished in {found.weeks} weeks, {found.done} done")
        print(f"  of the operations planned on a Monday {100 * planned:.0f} % were done in that week")
        print(f"  the fortnight's hours moved by at most {100 * moved(found):.0f} %,", end="")
        print(f" those that were worked by {100 * moved_of_itself(found):.0f} %")
        print(f"  ranges of week 2 that held: {within} of {of}")
        for each in found.ranges:
            print(f"    {each.instrument}: {_days(each.most)}, came {found.finished.get(each.instrument, NEVER):%d %b}")
        print(f"  promised twice {found.promised_twice}, before their time {len(found.broken)}")
        print(f"  the machines ran on {found.nights_run} nights" if asked.machines else "  no machines")
        print(f"  pieces spoiled {found.spoiled}, begun anew {found.begun_anew}")
        print(f"  slips asked about {found.asked} of {found.asked + found.not_asked}")
        sys.stdout.flush()
    return 0


def _days(days: tuple[datetime | None, datetime | None]) -> str:
    return " to ".join(f"{day:%d %b}" if day else "beyond all weeks" for day in days)


def _asked() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--seeds", type=int, default=1)
    parser.add_argument("--first", type=int, default=1)
    parser.add_argument("--weeks", type=int, default=40)
    parser.add_argument("--outlook", action="store_true")
    parser.add_argument("--machines", action="store_true")
    return parser.parse_args()


if __name__ == "__main__":
    sys.exit(main())
