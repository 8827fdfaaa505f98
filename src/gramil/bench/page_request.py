"""One request as plain data, and how a page's function is called with it: off the event loop, with its faults shown.

A page is a plain function from `PageRequest` to a response. Every change is a POST with the session's token in it.
"""

from collections.abc import Awaitable, Callable, Mapping
from dataclasses import dataclass
from datetime import datetime
from urllib.parse import urlencode

from starlette.concurrency import run_in_threadpool
from starlette.datastructures import UploadFile
from starlette.requests import Request
from starlette.responses import HTMLResponse, PlainTextResponse, RedirectResponse, Response

from gramil import names as n
from gramil.bench.guard import TooLarge, too_large
from gramil.bench.held_drawings import HeldDrawings
from gramil.bench.held_plans import HeldPlans
from gramil.bench.long_work import LongWorks
from gramil.bench.sessions import Session, same_token
from gramil.bench.shop_record import ShopRecord
from gramil.bench.templating import render
from gramil.faults import Fault, MakersFault
from gramil.store.writing import Hand

MOST_FIELDS = 200
PICTURE = "picture"
"""Files sent in a field of this name are pictures, and no text."""


class Missing(Exception):  # noqa: N818 (it says what it is)
    """There is no such page, instrument or figure; carries the name of what is missing in words."""


def whole_number(text: str) -> int | None:
    """A whole number from 0, of 15 digits at most, as a record can hold it; None for anything else."""
    return int(text) if text.isdecimal() and len(text) < 16 else None


@dataclass(frozen=True)
class Sent:
    """A picture that was sent: its file's name, and its content."""

    name: str
    content: bytes


@dataclass(frozen=True)
class PageRequest:
    """What was asked: the path's words, the query and the form (each key with its texts), by whom, and when."""

    words: Mapping[str, str]
    query: Mapping[str, tuple[str, ...]]
    form: Mapping[str, tuple[str, ...]]
    session: Session
    record: ShopRecord
    works: LongWorks
    plans: HeldPlans
    drawings: HeldDrawings
    now: datetime
    part: bool
    path: str
    pictures: tuple[Sent, ...] = ()

    def one(self, key: str, usual: str = "") -> str:
        """The last text given for a key, in the form or else in the query."""
        found = self.form.get(key) or self.query.get(key) or (usual,)
        return found[-1].strip()

    def number(self, key: str, otherwise: int = 0) -> int:
        """The whole number at a key; `otherwise` if there is none, or none that a record can hold."""
        found = whole_number(self.one(key))
        return otherwise if found is None else found

    def many(self, key: str) -> tuple[str, ...]:
        """Every text of a key, in the form or else in the query."""
        return self.form.get(key) or self.query.get(key) or ()

    def page(self, template: str, status: int = 200, /, **values: object) -> Response:
        """A page of the bench, rendered with the values that every page needs."""
        common = {
            "session": self.session,
            "path": self.path,
            "part": self.part,
            "here": self.here,
            "unit": self.session.unit or _own_unit(values.get("held")),
        }
        return HTMLResponse(render(template, **{**common, **values}), status)

    @property
    def hand(self) -> Hand:
        """In whose hand a change is written down: the session's, now, for the reason that the form gives, if any."""
        return Hand(self.now, self.session.who, self.one("why"))

    @property
    def here(self) -> str:
        """This page's own address, query and all."""
        pairs = [(key, value) for key, values in self.query.items() for value in values]
        return self.path + ("?" + urlencode(pairs) if pairs else "")


def _own_unit(held: object) -> str:
    """The unit of the instrument that a page is about, in which its figures stand; millimetres on pages of the shop."""
    figures = getattr(held, "figures", None)
    return str(figures[n.instrument_units]) if figures is not None else "mm"


Page = Callable[[PageRequest], Response]
Endpoint = Callable[[Request], Awaitable[Response]]


def endpoint(page: Page) -> Endpoint:
    """A page's function wrapped as the server calls it."""

    async def answer(request: Request) -> Response:
        try:
            form, pictures = await _form(request)
        except TooLarge:
            return PlainTextResponse(too_large(request.url.path), 413)
        session: Session = request.state.session
        if request.method == "POST" and not same_token(session, form.get("token", ("",))[-1]):
            return PlainTextResponse("This form is too old. Open the page again; what you typed is kept there.", 403)
        return await run_in_threadpool(_answered, page, _asked(request, form, pictures, session))

    return answer


async def _form(request: Request) -> tuple[Mapping[str, tuple[str, ...]], tuple[Sent, ...]]:
    """The form's texts, files' among them, and the pictures as they came."""
    if request.method != "POST":
        return {}, ()
    async with request.form(max_files=4, max_fields=MOST_FIELDS, max_part_size=2_000_000) as form:
        pictures = [each for each in form.getlist(PICTURE) if isinstance(each, UploadFile)]
        sent = tuple([Sent(each.filename or "", await each.read()) for each in pictures])
        return {key: tuple([await _text(value) for value in form.getlist(key)]) for key in form if key != PICTURE}, sent


async def _text(value: UploadFile | str) -> str:
    """A field's text, or that of a file that was sent: UTF-8, UTF-16 with its mark, or the Windows letters."""
    if isinstance(value, str):
        return value
    content = await value.read()
    if content[:2] in (b"\xff\xfe", b"\xfe\xff"):
        return content.decode("utf-16", errors="replace")
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError:
        return content.decode("cp1252", errors="replace")


def _asked(
    request: Request, form: Mapping[str, tuple[str, ...]], pictures: tuple[Sent, ...], session: Session
) -> PageRequest:
    query = {key: tuple(request.query_params.getlist(key)) for key in request.query_params}
    return PageRequest(
        words=request.path_params,
        query=query,
        form=form,
        session=session,
        record=request.app.state.record,
        works=request.app.state.works,
        plans=request.app.state.plans,
        drawings=request.app.state.drawings,
        now=request.app.state.clock(),
        part="hx-request" in request.headers,
        path=request.url.path,
        pictures=pictures,
    )


def _answered(page: Page, asked: PageRequest) -> Response:
    try:
        return page(asked)
    except MakersFault as fault:
        return asked.page("faults.html", 422, faults=fault.faults)
    except Missing as missing:
        return asked.page("faults.html", 404, faults=[Fault(what=f"there is no {missing} here")])


def go(address: str) -> Response:
    """Redirect to another page after a change, so that the back key does not send the form again."""
    return RedirectResponse(address, 303)


def own_address(address: str, usual: str = "/") -> str:
    """An address within the bench; the usual one if the given address leads elsewhere."""
    return address if address.startswith("/") and not address.startswith(("//", "/\\")) else usual
