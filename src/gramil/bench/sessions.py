"""Who is let in: sessions in memory that expire, each with its own token for changes, and one-time codes for phones.

A session lasts no longer than this run of the bench; a code lets one phone in, once, within ten minutes. Wrong guesses
shut out the device that makes them and nobody else: a code is not voided by strangers, nor by another page.
"""

import hmac
import secrets
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from hashlib import sha256
from threading import Lock

Clock = Callable[[], datetime]
LASTS = timedelta(hours=12)
"""A session ends so long after it was last used: a working day."""
CODE_LASTS = timedelta(minutes=10)
CODE_LETTERS = "23456789abcdefghjkmnpqrstuvwxyz"
"""Letters of a code: none that is easily taken for another."""
CODE_LENGTH = 8
WRONG_TRIES = 5
"""After this many wrong codes within ten minutes a device is ignored for ten minutes."""
OPEN_CODES = 5
"""How many codes are open at once; the oldest goes first."""
MOST = 500
"""More sessions than this push out the ones unused longest."""


@dataclass
class Session:
    """One browser let in: its key (the cookie), its token for changes, the maker's unit and name as last given.

    `told` says, in sentences, what its last change to the shop led to; `began` and `address` are when and from where it
    was let in.
    """

    key: str
    token: str
    used: datetime
    local: bool
    unit: str = ""
    who: str = ""
    told: tuple[str, ...] = ()
    began: datetime | None = None
    address: str = ""

    @property
    def mark(self) -> str:
        """A name for it on a page, from which its key cannot be told."""
        return sha256(self.key.encode()).hexdigest()[:16]


@dataclass
class Sessions:
    """Every session of this run, the codes with which a phone can be paired now, and who has guessed wrongly when."""

    clock: Clock
    known: dict[str, Session] = field(default_factory=dict)
    codes: dict[str, datetime] = field(default_factory=dict)
    wrong: dict[str, list[datetime]] = field(default_factory=dict)
    lock: Lock = field(default_factory=Lock)

    def start(self, local: bool, address: str = "") -> Session:
        """A new session, for a device at an address."""
        now = self.clock()
        session = Session(secrets.token_urlsafe(32), secrets.token_urlsafe(24), now, local, began=now, address=address)
        with self.lock:
            self._forget()
            self.known[session.key] = session
        return session

    def find(self, key: str) -> Session | None:
        """The session of a cookie, or None if it never existed or has expired; finding it extends it."""
        now = self.clock()
        with self.lock:
            session = self.known.get(key)
            if session is None or now - session.used > LASTS:
                self.known.pop(key, None)
                return None
            session.used = now
            return session

    def end(self, session: Session) -> None:
        """Ends a session at once."""
        with self.lock:
            self.known.pop(session.key, None)

    def phones(self) -> tuple[Session, ...]:
        """The phones let in and not put out since, the one used last first."""
        now = self.clock()
        with self.lock:
            found = [each for each in self.known.values() if not each.local and now - each.used <= LASTS]
        return tuple(sorted(found, key=lambda each: each.used, reverse=True))

    def put_out(self, mark: str) -> Session | None:
        """Ends the session of one phone at once; gives it, or None if no phone has that mark."""
        found = next((each for each in self.phones() if each.mark == mark), None)
        if found is not None:
            self.end(found)
        return found

    @property
    def code(self) -> str:
        """The code that was asked for last and still serves, or empty."""
        with self.lock:
            return next(reversed(self._open()), "")

    def new_code(self) -> str:
        """A fresh one-time code; those asked for before go on serving."""
        with self.lock:
            self.codes = self._open()
            while len(self.codes) >= OPEN_CODES:
                del self.codes[next(iter(self.codes))]
            made = "".join(secrets.choice(CODE_LETTERS) for _ in range(CODE_LENGTH))
            self.codes[made] = self.clock()
            return made

    def pair(self, code: str, address: str = "") -> Session | None:
        """The session that a code opens, once, for a device at an address; None for a wrong, used or expired code, and
        for a device that guessed wrongly too often.
        """
        with self.lock:
            given, right = code.strip().lower().encode(), ""
            for each in self._open():
                right = each if hmac.compare_digest(given, each.encode()) else right
            if len(self._guesses(address)) >= WRONG_TRIES:
                return None
            if right:
                del self.codes[right]
            else:
                self._note_wrong(address)
        return self.start(local=False, address=address) if right else None

    def _open(self) -> dict[str, datetime]:
        now = self.clock()
        return {code: at for code, at in self.codes.items() if now - at <= CODE_LASTS}

    def _guesses(self, address: str) -> list[datetime]:
        now = self.clock()
        return [at for at in self.wrong.get(address, ()) if now - at <= CODE_LASTS]

    def _note_wrong(self, address: str) -> None:
        self.wrong[address] = [*self._guesses(address), self.clock()]
        if len(self.wrong) > MOST:
            del self.wrong[next(iter(self.wrong))]

    def _forget(self) -> None:
        if len(self.known) >= MOST:
            for session in sorted(self.known.values(), key=lambda each: each.used)[: len(self.known) - MOST + 1]:
                del self.known[session.key]


def same_token(session: Session, given: str) -> bool:
    """Whether a token is the session's own, compared in constant time."""
    return hmac.compare_digest(session.token.encode(), given.encode())
