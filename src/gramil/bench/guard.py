"""The guard: which addresses are answered, who is let in, how much may be sent, and what a page may load.

It stands before every page. Only this machine is answered and, with `lan`, paired phones; a foreign Host header,
a change that another site asks for, and a body that is too large are refused before any page sees them.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from http.cookies import CookieError, SimpleCookie
from ipaddress import ip_address

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import PlainTextResponse, RedirectResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from gramil.bench.sessions import LASTS, Session, Sessions

COOKIE = "gramil_bench"
LARGEST_BODY = 2_000_000
"""More bytes than this in one request are refused."""
PICTURES = "/picture"
LARGEST_PICTURES = 60_000_000
"""The same where pictures are sent."""
SAFE = frozenset({"GET", "HEAD"})
PAIRING = "/pair"
FOR_PAIRING = frozenset({PAIRING, "/static/bench.css"})
"""All that a phone gets before it is paired."""
POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; "
    "connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
)
FACES = (".woff", ".ttf")
HEADERS: Mapping[str, str] = {
    "content-security-policy": POLICY,
    "x-content-type-options": "nosniff",
    "referrer-policy": "same-origin",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "permissions-policy": "camera=(), microphone=(), geolocation=()",
}


class TooLarge(Exception):  # noqa: N818 (it says what it is)
    """More was sent than is accepted."""


@dataclass(frozen=True)
class Guard:
    """The application `inner` behind the guard; `hosts` are the bench's own Host headers."""

    inner: ASGIApp
    sessions: Sessions
    hosts: frozenset[str]

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] == "lifespan":
            await self.inner(scope, receive, send)
            return
        if scope["type"] != "http":
            return
        headers = Headers(scope=scope)
        refusal = refused(headers, scope["method"], self.hosts, scope.get("scheme", "http"), scope["path"])
        session, new = self._session(headers, scope)
        if refusal is None and session is None and not _for_pairing(scope["path"]):
            refusal = _to_pairing(scope)
        answer = self.inner if refusal is None else refusal
        scope["state"] = {**scope.get("state", {}), "session": session}
        await answer(
            scope,
            _bounded(receive, largest(scope["path"])),
            _marked(send, cookie_of(session, scope.get("scheme", "http")) if new and session else "", scope),
        )

    def _session(self, headers: Headers, scope: Scope) -> tuple[Session | None, bool]:
        found = self.sessions.find(_cookie(headers))
        if found is not None or not is_local(scope):
            return found, False
        return self.sessions.start(local=True, address="this machine"), True


def largest(path: str) -> int:
    """How many bytes may be sent to an address at once."""
    return LARGEST_PICTURES if path == PICTURES else LARGEST_BODY


def too_large(path: str) -> str:
    """What is said to whoever sends more."""
    return f"That is more than {largest(path) // 1_000_000} MB. Nothing was taken."


def refused(
    headers: Headers, method: str, hosts: frozenset[str], scheme: str = "http", path: str = ""
) -> ASGIApp | None:
    """Why a request is not answered at all, or None."""
    if headers.getlist("host") and (len(headers.getlist("host")) > 1 or headers["host"].lower() not in hosts):
        return PlainTextResponse("This is not the bench's address.", 421)
    if "host" not in headers:
        return PlainTextResponse("This is not the bench's address.", 421)
    if _from_elsewhere(headers, method, scheme):
        return PlainTextResponse("Another site asked for this. Nothing was done.", 403)
    if int(_digits(headers.get("content-length", "0"))) > largest(path):
        return PlainTextResponse(too_large(path), 413)
    return None


def _digits(text: str) -> str:
    return text if text.isascii() and text.isdigit() and len(text) < 16 else "9" * 15


def _from_elsewhere(headers: Headers, method: str, scheme: str) -> bool:
    """Whether a page of another site asks for a change, or for anything but a followed link."""
    site = headers.get("sec-fetch-site", "none")
    if method in SAFE:
        return site == "cross-site" and headers.get("sec-fetch-mode") != "navigate"
    origin = headers.get("origin")
    own = origin is None or origin.lower() == f"{scheme}://{headers['host'].lower()}"
    return not own or site not in ("same-origin", "none")


def is_local(scope: Scope) -> bool:
    """Whether a request comes from this machine itself."""
    client = scope.get("client")
    try:
        return client is not None and ip_address(client[0]).is_loopback
    except ValueError:
        return False


def _for_pairing(path: str) -> bool:
    return path in FOR_PAIRING or path.startswith(PAIRING + "/")


def _to_pairing(scope: Scope) -> ASGIApp:
    if scope["method"] in SAFE and scope["path"] == "/":
        return RedirectResponse(PAIRING, 303)
    return PlainTextResponse("This phone is not paired. Open the bench's address and pair it first.", 403)


def _cookie(headers: Headers) -> str:
    try:
        found = SimpleCookie(headers.get("cookie", "")).get(COOKIE)
    except CookieError:
        return ""
    return found.value if found else ""


def cookie_of(session: Session, scheme: str = "http") -> str:
    """The cookie that carries a session: hidden from scripts, not sent to other sites or, over HTTPS, in the clear, and
    with an expiry.
    """
    age, secure = int(LASTS.total_seconds()), "; Secure" * (scheme == "https")
    return f"{COOKIE}={session.key}; Path=/; HttpOnly; SameSite=Strict; Max-Age={age}{secure}"


def _bounded(receive: Receive, most: int) -> Receive:
    """The same body, cut off with TooLarge once it grows too large, whatever its Content-Length said."""
    taken = 0

    async def receive_bounded() -> Message:
        nonlocal taken
        message = await receive()
        taken += len(message.get("body", b""))
        if taken > most:
            raise TooLarge
        return message

    return receive_bounded


def _kept(scope: Scope) -> str:
    """How long a browser may keep the answer: a file of ours named with its content for good, a face for a month, a
    page not at all.
    """
    path: str = scope["path"]
    if not path.startswith("/static/"):
        return "no-store"
    if scope.get("query_string", b"").startswith(b"v="):
        return "max-age=31536000, immutable"
    return "max-age=2592000" if path.endswith(FACES) else "no-cache"


def _marked(send: Send, cookie: str, scope: Scope) -> Send:
    """The answer with the headers that every answer carries."""

    async def send_marked(message: Message) -> None:
        if message["type"] == "http.response.start":
            headers = MutableHeaders(scope=message)
            for name, value in HEADERS.items():
                headers[name] = value
            headers.setdefault("cache-control", _kept(scope))
            if cookie:
                headers.append("set-cookie", cookie)
        await send(message)

    return send_marked
