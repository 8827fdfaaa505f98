"""Firefox driven over its own remote protocol (WebDriver BiDi), as far as a day on the bench needs it."""

import json
import re
import shutil
import subprocess
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Any

import pytest

MOST = 25.0
"""Seconds that are waited for anything at most."""
STILL = 0.05
"""Seconds from one look to the next at whether a thing to be pressed stands still."""
QUIET = {
    "app.update.enabled": False,
    "browser.aboutwelcome.enabled": False,
    "browser.shell.checkDefaultBrowser": False,
    "browser.startup.page": 0,
    "datareporting.policy.dataSubmissionEnabled": False,
    "dom.w3c_touch_events.enabled": 1,
    "extensions.systemAddon.update.enabled": False,
    "network.captive-portal-service.enabled": False,
    "network.connectivity-service.enabled": False,
    "services.settings.server": "",
    "toolkit.telemetry.enabled": False,
}
"""It asks nobody for anything, and takes fingers."""
LISTENS = re.compile(r"WebDriver BiDi listening on (ws://\S+)")
NAMES = """(kind, words) => {
  const kinds = {link: 'a[href]', button: 'button, summary', field: 'input, textarea, select'};
  const said = (it) => [it.getAttribute('aria-label'), it.labels && it.labels.length ? it.labels[0].textContent : '',
    it.textContent].map((text) => (text || '').trim().replace(/\\s+/g, ' '));
  const all = [...document.querySelectorAll(kinds[kind])].filter((it) => it.checkVisibility());
  return all.find((it) => said(it).some((text) => text === words))
    || all.find((it) => said(it).some((text) => text.startsWith(words))); }"""
"""The thing of a kind that a name belongs to, whole before in part."""


class Refused(Exception):  # noqa: N818 (it says what it is)
    """The browser does not do what it was asked."""


class Firefox:
    """One page in one browser. `touch`: hands are fingers, not a mouse."""

    def __init__(self, socket: Any, address: str, touch: bool) -> None:
        self.socket, self.address, self.touch = socket, address, touch
        self.count, self.wrong = 0, list[str]()
        self.ask("session.new", capabilities={})
        self.ask("session.subscribe", events=["log.entryAdded"])
        self.context: str = self.ask("browsingContext.getTree")["contexts"][0]["context"]

    def ask(self, method: str, **params: Any) -> Any:
        """A command's result; raises Refused."""
        self.count += 1
        self.socket.send(json.dumps({"id": self.count, "method": method, "params": params}))
        while True:
            said = json.loads(self.socket.recv(timeout=2 * MOST))
            if said.get("method") == "log.entryAdded" and said["params"]["level"] == "error":
                self.wrong.append(said["params"]["text"])
            if said.get("id") == self.count:
                if said["type"] == "error":
                    raise Refused(f"{method}: {said['error']}: {said['message']}")
                return said["result"]

    def size(self, width: int, height: int) -> None:
        self.ask("browsingContext.setViewport", context=self.context, viewport={"width": width, "height": height})

    def goto(self, path: str) -> None:
        self.ask("browsingContext.navigate", context=self.context, url=self.address + path, wait="complete")

    def reload(self) -> None:
        self.ask("browsingContext.reload", context=self.context, wait="complete")

    def value(self, expression: str) -> Any:
        """What an expression is on the page, by way of JSON; raises Refused."""
        answer = self.ask(
            "script.evaluate",
            expression=f"JSON.stringify({expression})",
            target={"context": self.context},
            awaitPromise=True,
        )
        if answer["type"] == "exception":
            raise Refused(answer["exceptionDetails"]["text"])
        return json.loads(answer["result"].get("value") or "null")

    def until(self, expression: str) -> Any:
        """Wait until an expression holds, over whatever pages come meanwhile."""
        ends = time.monotonic() + MOST
        while True:
            with suppress(Refused):
                if found := self.value(expression):
                    return found
            assert time.monotonic() < ends, f"{expression} is not met on {self.value('location.href')}"
            time.sleep(0.05)

    def reads(self, words: str) -> None:
        """Wait until the page says so."""
        self.until(f"document.body.innerText.includes({json.dumps(words)})")

    def place(self, kind: str, words: str) -> tuple[float, float]:
        """The middle of the thing of that name, brought into view, once it stands still: what comes late moves it."""
        found = f"({NAMES})({json.dumps(kind)}, {json.dumps(words)})"
        self.until(f"Boolean({found}) && document.readyState === 'complete' && document.fonts.status === 'loaded'")
        middle = (
            f"(() => {{ const it = {found}; it.scrollIntoView({{block: 'center', behavior: 'instant'}});"
            " const box = it.getBoundingClientRect(); return [box.left + box.width / 2, box.top + box.height / 2]; })()"
        )
        before, now = None, self.value(middle)
        while now != before:
            time.sleep(STILL)
            before, now = now, self.value(middle)
        return now[0], now[1]

    def press_at(self, x: float, y: float) -> None:
        """A tap or a click there."""
        down = [{"type": "pointerMove", "x": round(x), "y": round(y)}, {"type": "pointerDown", "button": 0}]
        hand = {"pointerType": "touch" if self.touch else "mouse"}
        pointer = {"type": "pointer", "id": "hand", "parameters": hand}
        self._act({**pointer, "actions": [*down, {"type": "pointerUp", "button": 0}]})

    def drag(self, start: tuple[float, float], end: tuple[float, float]) -> None:
        steps = [
            {"type": "pointerMove", "x": round(start[0] + (end[0] - start[0]) * k / 8),
             "y": round(start[1] + (end[1] - start[1]) * k / 8), "duration": 16}
            for k in range(1, 9)
        ]  # fmt: skip
        first = [
            {"type": "pointerMove", "x": round(start[0]), "y": round(start[1])},
            {"type": "pointerDown", "button": 0},
        ]
        hand = {"pointerType": "touch" if self.touch else "mouse"}
        pointer = {"type": "pointer", "id": "hand", "parameters": hand}
        self._act({**pointer, "actions": [*first, *steps, {"type": "pointerUp", "button": 0}]})

    def press(self, kind: str, words: str) -> None:
        self.press_at(*self.place(kind, words))

    def keys(self, text: str) -> None:
        actions = [{"type": way, "value": letter} for letter in text for way in ("keyDown", "keyUp")]
        self._act({"type": "key", "id": "keys", "actions": actions})

    def write(self, words: str, text: str) -> None:
        """Text in place of what the field of that name holds."""
        self.press("field", words)
        self.until(f"({NAMES})('field', {json.dumps(words)}) === document.activeElement")
        self.value("document.activeElement.select && document.activeElement.select()")
        self.keys(text)

    @contextmanager
    def answered(self) -> Iterator[None]:
        """What is pressed within is answered at its end."""
        self.value("document.getElementById('main').dataset.asked = 'yes'")
        yield
        self.until("document.readyState === 'complete' && Boolean(document.querySelector('#main:not([data-asked])'))")

    def follow(self, kind: str, words: str) -> None:
        """Press what leads to another page, and wait for it."""
        with self.answered():
            self.press(kind, words)

    def _act(self, *sources: dict[str, Any]) -> None:
        self.ask("input.performActions", context=self.context, actions=list(sources))


def installed() -> str:
    """Firefox's command; skips the test where there is none."""
    found = shutil.which("firefox-esr") or shutil.which("firefox")
    if found is None:
        pytest.skip("Firefox is not installed: the bench is not looked at in it")
    return found


@contextmanager
def firefox(folder: Path, address: str, touch: bool = False) -> Iterator[Firefox]:
    """A browser with a profile of its own in a folder, ended at the end."""
    connect = pytest.importorskip("websockets.sync.client", reason="websockets is not installed").connect
    prefs = "".join(f"user_pref({json.dumps(key)}, {json.dumps(value)});\n" for key, value in QUIET.items())
    (folder / "user.js").write_text(prefs, encoding="utf-8")
    command = [installed(), "--headless", "--no-remote", "--profile", str(folder), "--remote-debugging-port", "0"]
    program = subprocess.Popen(command, stderr=subprocess.PIPE, stdout=subprocess.DEVNULL, text=True)
    try:
        assert program.stderr is not None
        listens = next(found for line in program.stderr if (found := LISTENS.search(line)))
        with connect(f"{listens[1]}/session", max_size=None) as socket:
            yield Firefox(socket, address.rstrip("/"), touch)
    finally:
        program.terminate()
        program.wait()
