"""Several programs that write into one store at once: every change of every one is there, in whole numbers."""

import subprocess
import sys
from collections import Counter
from datetime import datetime
from itertools import pairwise
from pathlib import Path

from gramil.doorway.verify import verify
from gramil.shop.instruments import add_instrument, instrument, revisions
from gramil.shop.stock import Blank, add_blank, blank_named, blanks, promises
from gramil.store.opening import Store, open_store
from gramil.store.writing import Hand

PROGRAM = """
import sys
from datetime import UTC, datetime
from pathlib import Path
from gramil.faults import MakersFault
from gramil.shop.instruments import instrument, revision, save_revision
from gramil.store.opening import open_store
from gramil.shop.stock import Blank, add_blank, blank_named, promise_blank
from gramil.store.failures import Conflict
from gramil.store.writing import Hand
who = sys.argv[2]
now = datetime(2026, 11, 2, tzinfo=UTC)
promised = 0
with open_store(Path(sys.argv[1]), busy_seconds=60.0) as store:
    for number in range(30):
        add_blank(store, Blank(f"{who} {number}", "spruce", 560.0, 220.0, 4.2), Hand(now))
        while True:
            tarn = instrument(store, "Tarn")
            text = revision(store, tarn.id).text
            try:
                save_revision(store, tarn, text + who[0], Hand(now, who))
                break
            except Conflict as conflict:
                assert conflict.mine != "" and conflict.theirs != ""
        try:
            promise_blank(store, tarn.id, who, blank_named(store, "board").id, Hand(now))
            promised += 1
        except MakersFault:
            pass
print(promised)
"""


def test_three_programs_lose_nothing_and_promise_nothing_twice(store: Store, path: Path, now: datetime) -> None:
    add_instrument(store, "Tarn", "", Hand(now))
    add_blank(store, Blank("board", "ebony", 520.0, 72.0, 8.0, count=20), Hand(now))
    store.close()
    writers = [
        subprocess.Popen([sys.executable, "-c", PROGRAM, str(path), who], stdout=subprocess.PIPE, text=True)
        for who in ("anna", "ben", "cleo")
    ]
    promised = [int(writer.communicate()[0]) for writer in writers]
    assert [writer.returncode for writer in writers] == [0, 0, 0]
    with open_store(path) as again:
        assert len(blanks(again)) == 91
        tarn = instrument(again, "Tarn")
        saved = revisions(again, tarn.id)
        texts = [each.text for each in saved]
        assert [len(text) for text in texts] == list(range(91))
        assert all(later.startswith(text) for text, later in pairwise(texts))
        assert Counter(texts[-1]) == {"a": 30, "b": 30, "c": 30}
        assert sum(promised) == 20
        assert len([each for each in promises(again) if each.blank == blank_named(again, "board").id]) == 20
    assert verify(path) == ()
