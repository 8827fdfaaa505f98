"""Letting a phone in: the code on this machine's screen, and the page on which the phone gives it."""

from io import BytesIO

import segno
from starlette.requests import Request
from starlette.responses import HTMLResponse, PlainTextResponse, RedirectResponse, Response

from gramil.bench.ages import ago
from gramil.bench.guard import cookie_of, is_local
from gramil.bench.sessions import Session, Sessions, same_token
from gramil.bench.templating import render

LARGEST_CODE = 2000
"""Bytes that a form with a code may have."""


def qr_svg(address: str) -> str:
    """An address as a QR code, in SVG."""
    made = BytesIO()
    segno.make(address, error="m").save(
        made, kind="svg", scale=6, border=3, xmldecl=False, svgns=True, dark="#000", light="#fff"
    )
    return made.getvalue().decode()


async def pairing_page(request: Request) -> Response:
    """On this machine: a fresh code to scan. On a phone: the field for the code, filled in if it was scanned."""
    sessions: Sessions = request.app.state.sessions
    lan: str = request.app.state.lan
    if is_local(request.scope):
        if not lan:
            return HTMLResponse(render("pair_off.html", title="Phones"))
        code = sessions.code or sessions.new_code()
        address, now = f"{lan}/pair/{code}", sessions.clock()
        phones = [(each, *(ago(at, now) for at in (each.began or each.used, each.used))) for each in sessions.phones()]
        return HTMLResponse(
            render(
                "pair_show.html",
                title="Phones",
                code=code,
                address=address,
                qr=qr_svg(address),
                phones=phones,
                session=request.state.session,
            )
        )
    code = request.path_params.get("code", "")
    return HTMLResponse(render("pair.html", title="Pair this phone", code=code[:16], wrong=False))


async def pair(request: Request) -> Response:
    """Check the code that a phone sends: it gets a session, or the field again."""
    sessions: Sessions = request.app.state.sessions
    if int(request.headers.get("content-length", "0") or "0") > LARGEST_CODE:
        return PlainTextResponse("That is too long for a code.", 413)
    async with request.form(max_fields=5) as form:
        session = sessions.pair(str(form.get("code", "")), request.client.host if request.client else "")
    if session is None:
        return HTMLResponse(render("pair.html", title="Pair this phone", code="", wrong=True), 403)
    return RedirectResponse("/", 303, headers={"set-cookie": cookie_of(session, request.url.scheme)})


async def put_out(request: Request) -> Response:
    """Put one phone out, asked for on this machine."""
    sessions: Sessions = request.app.state.sessions
    session: Session | None = request.state.session
    if int(request.headers.get("content-length", "0") or "0") > LARGEST_CODE:
        return PlainTextResponse("That is too long.", 413)
    async with request.form(max_fields=5) as form:
        token, mark = str(form.get("token", "")), str(form.get("phone", ""))
    if session is None or not session.local or not same_token(session, token):
        return PlainTextResponse("A phone is removed only at the bench itself.", 403)
    sessions.put_out(mark)
    return RedirectResponse("/pair", 303)
