"""Templates to HTML: everything that a maker wrote is escaped."""

import re
from functools import cache
from hashlib import sha256
from importlib.resources import files

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup

from gramil.bench.field_words import in_field_words
from gramil.formatter import parted
from gramil.in_shop_units import in_shop_units
from gramil.measure import show_temperature
from gramil.notice import NOTICE


@cache
def environment() -> Environment:
    """The templates of this room, made ready once."""
    made = Environment(
        loader=PackageLoader("gramil.bench", "templates"),
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
        undefined=StrictUndefined,
        auto_reload=False,
    )
    made.filters["big"] = big
    made.filters["in_units"] = in_shop_units
    made.filters["warm"] = show_temperature
    made.filters["lasting"] = lasting
    made.filters["in_field_words"] = in_field_words
    made.filters["keys_as_words"] = keys_as_words
    made.globals["notice"] = NOTICE
    return made


def render(template: str, **values: object) -> str:
    """A template with values in it."""
    return environment().get_template(template).render(**values)


def big(text: str) -> Markup:
    """A shown figure, a list of them or a range, with numbers large and units small."""
    parts = text.split(", ")
    each_alone = len(parts) > 1 and all(parted(each)[1] for each in parts)
    return Markup(", ").join(map(_one_big, parts if each_alone else (text,)))


def _one_big(text: str) -> Markup:
    number, unit = parted(text)
    if unit.startswith("to "):
        last, unit = parted(unit.removeprefix("to "))
        number = f"{number} to {last}"
    return Markup('<b class="number">{}</b><span class="u">{}</span>').format(number, f" {unit}" if unit else "")


KEY = re.compile(r"\b([a-z]+)\.([a-z]\w*)\b")
"""A key of a file, as a finding names it: `neck.modulus`."""
FILE = re.compile(r"(toml|dxf|svg|csv|scl|pdf|json)$")


def keys_as_words(text: str) -> str:
    """What a finding says, with the keys in it as words: a page has fields, and no file to write them in."""
    return KEY.sub(lambda key: key[0] if FILE.match(key[2]) else f"{key[1]} {key[2].replace('_', ' ')}", text)


@cache
def lasting(file: str) -> str:
    """The address of a file of ours that a browser may keep for good: another content is another address."""
    content = files("gramil").joinpath("bench", "static", file).read_bytes()
    return f"/static/{file}?v={sha256(content).hexdigest()[:12]}"
