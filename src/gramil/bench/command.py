"""`gramil bench`: all of it in a browser, beside the vice."""

import webbrowser
from datetime import datetime
from pathlib import Path

import click


@click.command()
@click.option(
    "--store",
    type=click.Path(path_type=Path),
    default="shop.gramil",
    show_default=True,
    help="The shop's record; made if there is none.",
)
@click.option(
    "--port",
    type=click.IntRange(0, 65535),
    default=8418,
    show_default=True,
    help="Where to listen; 0 takes any free port.",
)
@click.option("--lan", is_flag=True, help="Let phones on this network in, each after pairing with a code.")
@click.option(
    "--https", is_flag=True, help="Serve HTTPS, with a certificate of the bench's own (needs the library cryptography)."
)
@click.option("--open/--no-open", "opens", default=False, help="Open the browser as well.")
def command(store: Path, port: int, lan: bool, https: bool, opens: bool) -> None:
    """The instruments, the sheets and the shop in a browser, on this machine alone.

    \b
    gramil bench --store shop.gramil --open
    gramil bench --store shop.gramil --lan
    """
    from gramil.bench.serving import ready, serve

    bench = ready(store, port, lan, lambda: datetime.now().astimezone(), https)
    click.echo(f"The bench is at {bench.address}   (Ctrl-C closes it)")
    if lan:
        _show_code(bench.lan, bench.sessions.new_code()) if bench.lan else click.echo("There is no network for phones.")
    if https:
        click.echo(
            "The browser will say that it does not know who made the certificate: this bench did. Go on; it asks once."
        )
    if opens:
        webbrowser.open(bench.address)
    serve(bench)


def _show_code(address: str, code: str) -> None:
    """The one-time code, both to scan and to type."""
    import segno

    segno.make(f"{address}/pair/{code}", error="m").terminal(compact=True)
    click.echo(
        f"Scan it with the phone, or open {address}/pair there and type {code}. It serves once, for ten minutes."
    )
