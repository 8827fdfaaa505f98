"""Serving the bench: on this machine, and with `lan` to phones on the same network once they are paired."""

import gc
import socket
from dataclasses import dataclass
from pathlib import Path
from threading import Thread

import uvicorn
from starlette.types import ASGIApp

from gramil.bench.application import application
from gramil.bench.certificate import certificate_for
from gramil.bench.sessions import Clock, Sessions
from gramil.bench.shop_record import record_at
from gramil.faults import MakersFault
from gramil.prints.whole import whole_graph

HERE = "127.0.0.1"
EVERYWHERE = "0.0.0.0"
"""Only when the maker asks for it, and then only paired phones are answered."""

IDLE = 320
"""Seconds for which a connection stays open with nothing on it: longer than a browser keeps one (300 s, from memory).

Where both give up at the same moment, what is asked just then is lost: on a busy machine 25 of 320 with the same time
on both sides, none with a longer one here.
"""


@dataclass(frozen=True)
class Bench:
    """A bench ready to serve: its application, where it listens, its address here and on the network (or empty), and
    the file with key and certificate if it is to serve HTTPS.
    """

    app: ASGIApp
    sessions: Sessions
    sockets: tuple[socket.socket, ...]
    address: str
    lan: str
    certificate: Path | None = None


def ready(store: Path, port: int, lan: bool, clock: Clock, https: bool = False) -> Bench:
    """Opens the record and takes the port; raises MakersFault if either fails."""
    record, sessions = record_at(store), Sessions(clock)
    listening = _listening(EVERYWHERE if lan else HERE, port)
    port = listening.getsockname()[1]
    own = own_address() if lan else ""
    certificate = certificate_for(store, own or HERE, clock()) if https else None
    scheme = "https" if https else "http"
    hosts = [f"{name}:{port}" for name in (HERE, "localhost", *((own,) if own else ()))]
    reached = f"{scheme}://{own}:{port}" if own else ""
    app = application(record, sessions, clock, hosts, reached)
    return Bench(app, sessions, (listening,), f"{scheme}://{HERE}:{port}/", reached, certificate)


def serve(bench: Bench) -> None:
    """Serves until stopped from the keyboard."""
    Thread(target=_made_ready, daemon=True).start()
    uvicorn.Server(configured(bench)).run(sockets=list(bench.sockets))


def configured(bench: Bench) -> uvicorn.Config:
    """How the bench is served: by one process, to whoever knows its address."""
    return uvicorn.Config(
        bench.app,
        ws="none",  # no page speaks through a web socket, and looking for one loads its library
        log_level="warning",
        access_log=False,
        proxy_headers=False,
        server_header=False,
        timeout_keep_alive=IDLE,
        ssl_certfile=bench.certificate,
        ssl_keyfile=bench.certificate,
    )


def _made_ready() -> None:
    """Make what every page needs while the maker is still opening the page, and exempt it from garbage collection,
    which would otherwise run in the middle of somebody's edit.
    """
    whole_graph()
    gc.collect()
    gc.freeze()


def _listening(host: str, port: int) -> socket.socket:
    made = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    made.setsockopt(socket.SOL_SOCKET, own_port(), 1)
    try:
        made.bind((host, port))
    except (OSError, OverflowError) as error:
        made.close()
        why = getattr(error, "strerror", "") or "there is no such port"
        raise MakersFault.of(
            f"port {port} cannot be had", why, "name another with --port, or close the other bench"
        ) from None
    made.listen(128)
    return made


def own_port() -> int:
    """The socket option by which a port that was just closed can be taken again, but not one that is in use.

    On systems that have an option for exclusive use, the usual one would give the port to two benches at once.
    """
    return int(getattr(socket, "SO_EXCLUSIVEADDRUSE", socket.SO_REUSEADDR))


def own_address() -> str:
    """This machine's address on its network, found without sending anything; empty if there is no network."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            probe.connect(("192.0.2.1", 9))
        except OSError:
            return ""
        return str(probe.getsockname()[0])
