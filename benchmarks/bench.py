"""The bench: an edit of the scale to a redrawn page at the server, weights of pages, the drawing moved on a slow
processor, fifty clients at once, memory.
"""

import asyncio
import gzip
import os
import re
import shutil
import socket
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from pathlib import Path
from statistics import median
from time import perf_counter, sleep
from typing import Any
from urllib.parse import urlencode
from urllib.request import HTTPCookieProcessor, OpenerDirector, Request, build_opener

from benchmarks.starts import least
from benchmarks.timing import milliseconds

CLIENTS, EACH = 50, 4
SLOW = 6
"""A sixth of this processor, as an old phone's."""
GESTURES = {"two fingers": [[-1.0, -1.0], [1.0, 1.0]], "one finger": [[0.6, 1.0]]}
"""How far each finger goes at a frame, in px; enlarged first, then moved."""
MOVED = """(fingers) => new Promise((done) => {
  const plan = document.getElementById('plan'), edge = plan.getBoundingClientRect();
  const at = fingers.map(([x, y]) => [edge.left + edge.width / 2 + 20 * x, edge.top + edge.height / 2 + 20 * y]);
  const send = (kind, which) => plan.dispatchEvent(new PointerEvent(kind, {bubbles: true, pointerType: 'touch',
    pointerId: which + 1, clientX: at[which][0], clientY: at[which][1], isPrimary: which === 0}));
  plan.setPointerCapture = () => {}; plan.hasPointerCapture = () => true;
  fingers.forEach((_, which) => send('pointerdown', which));
  let frames = 0, began = 0;
  const step = (now) => {
    began = began || now;
    fingers.forEach(([x, y], which) => { at[which][0] += x; at[which][1] += y; send('pointermove', which); });
    frames += 1;
    if (now - began < 2000) { requestAnimationFrame(step); return; }
    fingers.forEach((_, which) => send('pointerup', which));
    done(1000 * (frames - 1) / (now - began));
  };
  requestAnimationFrame(step); })"""
"""Fingers that move at every frame for two seconds: how many frames there were in a second."""
HALF = (
    *((0, 38), (12, 82), (30, 107.4), (45, 119), (70, 129.3), (95, 133), (118, 130.5), (140, 125), (162, 119.4)),
    *((185, 117), (207, 121), (230, 130), (257, 147.5), (285, 165), (317, 179.4), (350, 186), (380, 183.4)),
    *((410, 172), (435, 153), (455, 131), (470, 105), (482, 72), (490, 0)),
)
"""Half of a body at stations, as it is typed off a plan, mm."""
PAGES = ("/", "/instrument/1", "/instrument/1/sheet/slot", "/instrument/1/cents", "/instrument/1/figures", "/weeks")


def run() -> None:
    with tempfile.TemporaryDirectory() as folder, _served(Path(folder)) as (address, server):
        opener = build_opener(HTTPCookieProcessor())
        _demo(opener, address)
        print(f"a first page, nothing kept        {milliseconds(_took(opener, address + '/instrument/1'))}")
        _edits(opener, address, server.pid)
        _plan(opener, address, server.pid)
        _weight(address)
        _first_paint(address)
        _frames(address)
        for page in PAGES:
            size = len(opener.open(address + page).read())
            print(f"{page:<33} {milliseconds(_took(opener, address + page))}  {size / 1000:.0f} kB")
        _crowd(address)
        print(f"the server's memory               {_memory(server.pid):.0f} MB at most (budget 250)")


@contextmanager
def _served(folder: Path) -> Iterator[tuple[str, subprocess.Popen[bytes]]]:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port = probe.getsockname()[1]
    command = [sys.executable, "-m", "gramil.cli", "bench", "--store", str(folder / "shop.gramil"), "--port", str(port)]
    started = perf_counter()
    server = subprocess.Popen(command, stdout=subprocess.DEVNULL)
    address = f"http://127.0.0.1:{port}"
    while True:
        try:
            build_opener().open(address + "/new", timeout=2).read()
            break
        except OSError:
            sleep(0.01)
    print(f"from the command to a first page  {milliseconds(perf_counter() - started)} (budget 1000)")
    alone, bare = _processor(server.pid), least([sys.executable, "-c", "pass"])
    print(f"the server's processor for it     {milliseconds(alone)}   {alone / bare:.0f} times the bare interpreter")
    try:
        yield address, server
    finally:
        server.terminate()
        server.wait()


def _demo(opener: OpenerDirector, address: str) -> None:
    _post(opener, address, "/demo", _token(opener, address))


def _token(opener: OpenerDirector, address: str) -> str:
    token = re.search(r'name="token" value="([^"]+)"', opener.open(address + "/new").read().decode())
    assert token is not None
    return token[1]


def _post(opener: OpenerDirector, address: str, path: str, token: str, **fields: str) -> float:
    """How long a form that is sent takes to be answered, in seconds."""
    request = Request(address + path, urlencode({"token": token, **fields}).encode(), {"origin": address})
    started = perf_counter()
    opener.open(request).read()
    return perf_counter() - started


def _plan(opener: OpenerDirector, address: str, server: int) -> None:
    """A point of a plan moved, to the curve drawn anew; then the same while a half-width stands out."""
    token = _token(opener, address)
    for words, slip in (("a plan's point moved, curve redrawn", 0.0), ("the same while one stands out", 9.0)):
        times, began = [], 0.0
        for step in range(21):
            began = began if step > 1 else _processor(server)
            rows = [(x, half + (step / 50 if x == 350 else 0) - (slip if x == 285 else 0)) for x, half in HALF]
            outline = "\n".join(f"{x}, {half}" for x, half in rows)
            times.append(_post(opener, address, "/plan/seen", token, outline=outline))
        alone = (_processor(server) - began) / 20
        print(f"{words:<33} {milliseconds(median(times[1:]))} (budget 30 ms)  processor {milliseconds(alone)}")


def _took(opener: OpenerDirector, address: str) -> float:
    started = perf_counter()
    opener.open(address).read()
    return perf_counter() - started


def _edits(opener: OpenerDirector, address: str, server: int) -> None:
    """Each time another scale, so that nothing is kept from before; and the server's processor time for each, which
    other work on the machine changes little.
    """
    times, began = [], 0.0
    for step in range(21):
        began = began if step > 1 else _processor(server)
        page = f"{address}/instrument/1?fret=7&key=scale.length&value={631 + step / 4}"
        times.append(_took(opener, page))
    alone = (_processor(server) - began) / 20
    size = len(opener.open(page).read()) / 1000
    edit = milliseconds(median(times[1:]))
    print(f"an edit of the scale, whole page  {edit} (budget 50 ms)  {size:.0f} kB (300)")
    print(f"the server's processor for it     {milliseconds(alone)}")
    moves = [_took(opener, f"{address}/instrument/1/cut?x={100 + step * 7.3}") for step in range(21)]
    print(f"the section line moved            {milliseconds(median(moves))}")


def _weight(address: str) -> None:
    """The instrument's page with all that a browser asks for that was never there before, as it goes over the wire."""
    page = _sent(address + "/instrument/1")
    asked = re.findall(r'(?:href|src)="(/static/[^"]+)"', gzip.decompress(page).decode())
    faces = ["/static/B612-Regular.woff", "/static/B612-Bold.woff"]
    whole = len(page) + sum(len(_sent(address + each)) for each in (*asked, *faces))
    print(f"that page, all of it, compressed  {whole / 1000:8.0f} kB (budget 150)")


def _sent(address: str) -> bytes:
    answer: bytes = build_opener().open(Request(address, headers={"accept-encoding": "gzip"})).read()
    return answer


def _frames(address: str) -> None:
    """Frames a second while the drawing is enlarged and moved, by an upright phone with a sixth of this processor."""
    found = _browser()
    if found is None:
        return
    driver, chromium = found
    with driver() as started:
        browser = started.chromium.launch(executable_path=chromium, args=["--no-sandbox", "--disable-gpu"])
        page = browser.new_page(viewport={"width": 360, "height": 740}, has_touch=True, is_mobile=True)
        page.goto(address + "/instrument/1")
        page.wait_for_load_state("networkidle")
        page.evaluate("document.getElementById('plan').scrollIntoView()")
        session = page.context.new_cdp_session(page)
        session.send("Emulation.setCPUThrottlingRate", {"rate": SLOW})
        for what, fingers in GESTURES.items():
            print(f"frames a second, {what:<17}{page.evaluate(MOVED, fingers):8.0f} (at least 30)")
        browser.close()


def _browser() -> tuple[Any, str] | None:
    """What drives a browser, and the browser; None if either is not installed."""
    try:
        from playwright.sync_api import sync_playwright
    except ImportError:
        return None
    found = shutil.which("chromium")
    return None if found is None else (sync_playwright, found)


def _first_paint(address: str) -> None:
    """From asking for the page to its first paint, each time in a browser that was never open before."""
    browser = _browser()
    if browser is None:
        return
    started, found = browser
    with started() as driver:
        times = sorted(_painted(driver, found, address) for _ in range(7))
    print(f"first paint, browser just started {times[3]:8.2f} ms (budget 500), {times[0]:.0f} to {times[-1]:.0f}")


def _painted(driver: Any, chromium: str, address: str) -> float:
    browser = driver.chromium.launch(executable_path=chromium, args=["--no-sandbox", "--disable-gpu"])
    try:
        page = browser.new_page(viewport={"width": 1600, "height": 1000})
        page.goto(address + "/instrument/1")
        paints: list[float] = []
        while not paints:
            paints = page.evaluate("performance.getEntriesByName('first-contentful-paint').map(each => each.startTime)")
        return paints[0]
    finally:
        browser.close()


def _crowd(address: str) -> None:
    """Fifty clients, each its own session, asking and editing at once."""
    started = perf_counter()
    codes = asyncio.run(_all(address))
    wrong = [code for code in codes if code != 200]
    took = perf_counter() - started
    print(f"{CLIENTS} clients, {len(codes)} pages at once      {milliseconds(took)}, {len(wrong)} errors")


async def _all(address: str) -> list[int]:
    async def one(number: int) -> list[int]:
        opener, codes = build_opener(HTTPCookieProcessor()), []
        for step in range(EACH):
            page = f"{address}/instrument/{1 + number % 3}?fret={step + 1}&set=nut.width%3D{44 + number / 50}+mm"
            answer = await asyncio.to_thread(opener.open, page, None, 60)
            answer.read()
            codes.append(answer.status)
        return codes

    asyncio.get_running_loop().set_default_executor(ThreadPoolExecutor(CLIENTS))
    return [code for codes in await asyncio.gather(*map(one, range(CLIENTS))) for code in codes]


def _processor(process: int) -> float:
    """Seconds of a processor that a process has taken so far."""
    status = Path(f"/proc/{process}/stat")
    if not status.exists():
        return float("nan")
    fields = status.read_text().rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


def _memory(process: int) -> float:
    """The most memory that the process held, in MB."""
    status = Path(f"/proc/{process}/status")
    if not status.exists():
        return float("nan")
    found = re.search(r"VmHWM:\s+(\d+) kB", status.read_text())
    return int(found[1]) / 1000 if found else float("nan")
