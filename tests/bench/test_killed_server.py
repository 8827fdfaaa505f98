"""The server killed in mid-save: whatever it answered for is there when it runs again."""

import os
import re
import signal
import socket
import subprocess
import sys
import threading
import time
from pathlib import Path

import httpx
import pytest
from tests.walks import fewer

from gramil.shop.instruments import instrument, revisions
from gramil.store.opening import open_store

from .conftest import post, token_of

KILLS = fewer(5, 3)
SAVES = 3
"""Answers that are waited for before each kill."""


@pytest.mark.slow
def test_nothing_that_was_answered_for_is_lost(tmp_path: Path) -> None:
    answered: list[str] = []
    for round_number in range(KILLS):
        server, client = started(tmp_path)
        if round_number == 0:
            post(client, "/new", **{"instrument.name": "Moss"})
        saving = threading.Thread(target=save_on, args=(client, round_number, answered))
        wanted = len(answered) + SAVES
        saving.start()
        while len(answered) < wanted and saving.is_alive():
            time.sleep(0.01)
        time.sleep(0.07 * round_number)
        os.kill(server.pid, signal.SIGKILL)
        server.wait()
        saving.join()
    with open_store(tmp_path / "shop.gramil") as store:
        kept = [each.why for each in revisions(store, instrument(store, "Moss").id)]
    assert len(answered) >= KILLS * SAVES
    assert set(answered) <= set(kept)
    assert len(kept) == len(set(kept)), "and nothing is there twice"


def started(folder: Path) -> tuple[subprocess.Popen[bytes], httpx.Client]:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port = probe.getsockname()[1]
    command = [sys.executable, "-m", "gramil.cli", "bench", "--store", str(folder / "shop.gramil"), "--port", str(port)]
    server = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    client = httpx.Client(base_url=f"http://127.0.0.1:{port}", follow_redirects=True, timeout=60)
    for _ in range(1200):
        try:
            client.get("/new")
        except httpx.TransportError:
            time.sleep(0.05)
        else:
            return server, client
    raise AssertionError("the bench did not answer")


def save_on(client: httpx.Client, round_number: int, answered: list[str]) -> None:
    """Keep one revision after another until nobody answers."""
    number = 0
    while True:
        number += 1
        why, change = f"{round_number}.{number}", f"nut.width={44 + round_number / 10 + number / 1000} mm"
        try:
            page = client.get("/instrument/1", params={"set": change}).text
            fields = dict(re.findall(r'<input type="hidden" name="(version|base)" value="([^"]+)"', page))
            form = {"token": token_of(client.get("/new")), "set": change, "why": why, **fields}
            answer = client.post("/instrument/1/keep", data=form, follow_redirects=False)
        except httpx.TransportError:
            return
        if answer.status_code == 303:
            answered.append(why)
