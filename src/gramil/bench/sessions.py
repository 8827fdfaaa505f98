"""Who is let in: sessions in memory that expire, each with its own token for changes, and one-time codes for phones.

A session lasts no longer than this run of the bench; a code lets one phone in, once, within ten minutes.
"""

import hmac
import secrets
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from threading import Lock

Clock = Callable[[], datetime]
LASTS = timedelta(hours=12)
"""A session ends so long after it was last used: a working day."""
CODE_LASTS = timedelta(minutes=10)
CODE_LETTERS = "23456789abcdefghjkmnpqrstuvwxyz"
"""Letters of a code: none that is easily taken for another."""
CODE_LENGTH = 8
WRONG_TRIES = 5
"""So many wrong codes make the true one void."""
MOST = 500
"""More sessions than this push out the ones unused longest."""


@dataclass
class Session:
    """One browser let in: its key (the cookie), its token for changes, the maker's unit and name as last given.

    `told` says, in sentences, what its last change to the shop led to.
    """

    key: str
    token: str
    used: datetime
    local: bool
    unit: str = ""
    who: str = ""
    told: tuple[str, ...] = ()


@dataclass
class Sessions:
    """Every session of this run, and the code with which a phone can be paired now."""

    clock: Clock
    known: dict[str, Session] = field(default_factory=dict)
    code: str = ""
    code_from: datetime | None = None
    wrong: int = 0
    lock: Lock = field(default_factory=Lock)

    def start(self, local: bool) -> Session:
        """A new session."""
        session = Session(secrets.token_urlsafe(32), secrets.token_urlsafe(24), self.clock(), local)
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

    def new_code(self) -> str:
        """A fresh one-time code; the one before is void."""
        with self.lock:
            self.code = "".join(secrets.choice(CODE_LETTERS) for _ in range(CODE_LENGTH))
            self.code_from, self.wrong = self.clock(), 0
            return self.code

    def pair(self, code: str) -> Session | None:
        """The session that a code opens, once; None for a wrong, used or expired code."""
        with self.lock:
            right = self._is_open() and hmac.compare_digest(code.strip().lower().encode(), self.code.encode())
            if right:
                self.code = ""
            else:
                self._note_wrong()
        return self.start(local=False) if right else None

    def _is_open(self) -> bool:
        return bool(self.code) and self.code_from is not None and self.clock() - self.code_from <= CODE_LASTS

    def _note_wrong(self) -> None:
        self.wrong += 1
        if self.wrong >= WRONG_TRIES:
            self.code = ""

    def _forget(self) -> None:
        if len(self.known) >= MOST:
            for session in sorted(self.known.values(), key=lambda each: each.used)[: len(self.known) - MOST + 1]:
                del self.known[session.key]


def same_token(session: Session, given: str) -> bool:
    """Whether a token is the session's own, compared in constant time."""
    return hmac.compare_digest(session.token.encode(), given.encode())
