"""Which shop and which store a command uses if none is named: the one beside the instrument, else the one that is set.

A shop, in this order: `shop.toml` beside the instrument's file (or in this folder, where a command takes none); the
file that `GRAMIL_SHOP` names; the one in the settings file. A store is used if an instrument is asked for by its name:
the one that is set, else the only one in this folder. A choice not made on the command line is said on the error
stream, so that no shop is used without the maker knowing.
"""

import os
import tomllib
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import click
from click.core import ParameterSource

from gramil.cli.manners import aside
from gramil.faults import MakersFault

BESIDE = "shop.toml"
SETTINGS = "settings.toml"
STORES = "*.gramil"


def shop_meant(context: click.Context, _: click.Parameter, named: Path | None) -> Path | None:
    """The shop named, or else the one found; None means the package's own. Raises MakersFault for bad settings."""
    if named is not None or context.resilient_parsing:
        return named
    if _given(context, "store") or _by_name(context):
        return None
    first = _first_file(context)
    beside = (first.parent if first else Path()) / BESIDE
    if beside.is_file() and (first is None or not _same(first, beside)):
        return _said("shop", beside)
    return _set("shop")


def shop_needed(context: click.Context, parameter: click.Parameter, named: Path | None) -> Path | None:
    """The same for commands about the shop itself. Raises MissingParameter if there is none."""
    found = shop_meant(context, parameter, named)
    if found is None and not context.resilient_parsing:
        raise click.MissingParameter(ctx=context, param=parameter)
    return found


def store_meant(context: click.Context, _: click.Parameter, named: Path | None) -> Path | None:
    """The store named, or the one that is set if an instrument is asked for by its name, or none."""
    if named is not None or context.resilient_parsing or _given(context, "shop"):
        return named
    if not _by_name(context):
        _refuse_several(context)
        return None
    found = _store()
    return None if found is None else _said("store", found)


def needed_store() -> Path:
    """The store that is set, or the only one in this folder, and says so. Raises MakersFault if there is none, or
    several.
    """
    found = _store()
    if found is None:
        raise _not_named("name one before the rest, or set GRAMIL_STORE")
    return _said("store", found)


def store_by_itself(named: Path | None) -> Path:
    """The store named, or the one that is set, or the only one in this folder. Raises MakersFault if there is none."""
    if named is not None:
        return named
    found = _store()
    if found is None:
        raise _not_named()
    return _said("store", found)


def _not_named(remedy: str = "name one with --store, or set GRAMIL_STORE") -> MakersFault:
    several = sorted(each.name for each in Path().glob(STORES))
    why = f"this folder has {', '.join(several)}" if several else "there is none in this folder"
    return MakersFault.of("no store is named", why, remedy)


def _refuse_several(context: click.Context) -> None:
    """Raises MakersFault where an instrument is asked for by a name that is no file's, and several stores lie here."""
    first = _first_file(context)
    by_name = first is not None and not first.suffix and not first.exists()
    several = _store() is None and len(list(Path().glob(STORES))) > 1
    if by_name and several and "store" in {each.name for each in context.command.params}:
        raise _not_named()


def _store() -> Path | None:
    """The store that is set, or the only one in this folder."""
    beside = list(Path().glob(STORES))
    return _settings().get("store") or (beside[0] if len(beside) == 1 else None)


def _by_name(context: click.Context) -> bool:
    """Whether a command that can use a store is asked for instruments that are not files, and a store is set."""
    if "store" not in {each.name for each in context.command.params} or _store() is None:
        return False
    first = _first_file(context)
    return first is None or not (first.exists() or first.suffix.lower() == ".toml")


def _given(context: click.Context, name: str) -> bool:
    return context.get_parameter_source(name) is ParameterSource.COMMANDLINE


def _first_file(context: click.Context) -> Path | None:
    for name in ("file", "old", "files"):
        found = context.params.get(name)
        if found:
            return Path(found[0]) if isinstance(found, tuple) else Path(found)
    return None


def _same(one: Path, other: Path) -> bool:
    return one.exists() and one.samefile(other)


def _set(what: str) -> Path | None:
    found = _settings().get(what)
    return None if found is None else _said(what, found)


def _said(what: str, path: Path) -> Path:
    aside(f"{what}: {path}")
    return path


def _settings() -> Mapping[str, Path]:
    """What is set: by the environment first, then by the settings file."""
    from_environment = {
        what: Path(os.environ[name])
        for what, name in (("shop", "GRAMIL_SHOP"), ("store", "GRAMIL_STORE"))
        if os.environ.get(name)
    }
    return {**_from_file(settings_file()), **from_environment}


def settings_file() -> Path:
    """Where the settings lie: in `GRAMIL_SETTINGS`, or where this system keeps programs' settings."""
    return Path(os.environ.get("GRAMIL_SETTINGS") or Path(click.get_app_dir("gramil")) / SETTINGS)


def _from_file(file: Path) -> dict[str, Path]:
    if not file.is_file():
        return {}
    try:
        written: Mapping[str, Any] = tomllib.loads(file.read_text(encoding="utf-8"))
    except ValueError as error:
        raise MakersFault.of("the settings are not TOML", str(error), where=str(file)) from None
    for key, value in written.items():
        if key not in ("shop", "store") or not isinstance(value, str):
            remedy = 'write shop = "the shop\'s file", store = "the store\'s file", or neither'
            raise MakersFault.of(f"{key} is no setting", remedy=remedy, where=str(file))
    return {key: file.parent / Path(value).expanduser() for key, value in written.items()}
