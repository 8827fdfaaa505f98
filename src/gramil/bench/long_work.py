"""Long work beside the pages: it says how far it is and can be stopped, while the bench goes on answering."""

import secrets
from collections import OrderedDict
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from threading import Event, Lock, Thread

from gramil.faults import MakersFault

KEPT = 4
"""How many pieces of work are kept, with what came of them; beyond that, the oldest is stopped and forgotten."""


@dataclass
class LongWork:
    """One piece of work: how many files it has, whether its turn has come, how many are made, and what came of it."""

    key: str
    count: int
    begun: bool = False
    done: int = 0
    made: bytes | None = None
    fault: str = ""
    stop: Event = field(default_factory=Event)

    @property
    def goes_on(self) -> bool:
        """Whether there is still something to wait for."""
        return self.made is None and not self.fault and not self.stop.is_set()


@dataclass
class LongWorks:
    """The work begun since the bench was started; one is done at a time, so that two do not take twice the memory."""

    known: OrderedDict[str, LongWork] = field(default_factory=OrderedDict)
    lock: Lock = field(default_factory=Lock)
    turn: Lock = field(default_factory=Lock)

    def begin(
        self, count: int, files: Iterator[tuple[str, bytes]], together: Callable[[Mapping[str, bytes]], bytes]
    ) -> LongWork:
        """Begins to make `count` files, and then one of them all."""
        work = LongWork(secrets.token_hex(8), count)
        with self.lock:
            self.known[work.key] = work
            while len(self.known) > KEPT:
                self.known.popitem(last=False)[1].stop.set()
        Thread(target=self._done, args=(work, files, together), daemon=True).start()
        return work

    def found(self, key: str) -> LongWork | None:
        """The work of that key, if it is still known."""
        with self.lock:
            return self.known.get(key)

    def _done(
        self, work: LongWork, files: Iterator[tuple[str, bytes]], together: Callable[[Mapping[str, bytes]], bytes]
    ) -> None:
        with self.turn:
            work.begun = True
            try:
                content = dict(_until_stopped(work, files))
                work.made = None if work.stop.is_set() else together(content)
            except MakersFault as fault:
                work.fault = str(fault)
            except Exception:
                work.fault = "The bench made a mistake of its own."
                raise


def _until_stopped(work: LongWork, files: Iterator[tuple[str, bytes]]) -> Iterator[tuple[str, bytes]]:
    if work.stop.is_set():
        return
    for each in files:
        work.done += 1
        yield each
        if work.stop.is_set():
            return
