"""The program's own words about measures, written in millimetres, newtons and MPa, as an inch shop reads them."""

import re
from collections.abc import Mapping

from gramil.inches import inch_places

POUND_FORCE = 4.4482216152605
"""Newtons in a pound-force: 0.45359237 kg times 9.80665 m/s2, both exact."""
INCH_POUND = POUND_FORCE * 0.0254
"""Newton metres in an inch-pound."""
PSI = POUND_FORCE / 25.4**2
"""MPa in a pound to the square inch."""
_UNITS: Mapping[str, tuple[float, str]] = {
    "mm": (25.4, "in"),
    "N m": (INCH_POUND, "in-lb"),
    "N mm": (INCH_POUND * 1000, "in-lb"),
    "MPa": (PSI, "psi"),
    "GPa": (PSI / 1000, "psi"),
    "N": (POUND_FORCE, "lbf"),
}
_IN_WORDS = {
    "half a millimetre": "0.5 mm",
    "a tenth of a millimetre": "0.1 mm",
    "a few tenths of a millimetre": "some hundredths of an inch",
    "some tenths of a millimetre": "some hundredths of an inch",
    "every millimetre": "every 1 mm",
    "each mm": "each inch",
    "to ten newtons": "to ten pounds",
    "(1/mm)": "(1/in)",
    ": 1/mm": ": 1/in",
}
_EXAMPLES = {
    '"0.57 g/m"': '"0.0000319 lb/in"',
    '"25 mm"': '"1 in"',
    '"400 mm"': '"16 in"',
    '"fret 12 + 5 mm"': '"fret 12 + 3/16 in"',
    '"6.38 mm"': '"0.251 in"',
    '"95 mm, 50 mm, 32 mm"': '"3 3/4 in, 2 in, 1 1/4 in"',
    '"84 mm, 104 mm"': '"3 5/16 in, 4 1/8 in"',
    '"bass, 220 mm, 60 mm, 38 mm"': '"bass, 8 5/8 in, 2 3/8 in, 1 1/2 in"',
    '"25 mm, 15 mm, 300 mm"': '"1 in, 5/8 in, 12 in"',
}
"""What the program writes as examples of what a maker may write."""
_NUMBER = r"-?\d+(?:\.\d+)?"
_UNIT = r"(?:N mm|N m|MPa|GPa|mm|N)\b(?![\d^']| mm\^)"
_MEASURES = re.compile(rf"(?:(?P<least>{_NUMBER})(?: mm)? to )?(?P<most>{_NUMBER}) (?P<unit>{_UNIT})")
"""A measure, or two that share a unit; not squares or cubes."""
_QUOTED = re.compile(r'("[^"]*"|“[^”]*”)')


def in_shop_units(words: str, first: str) -> str:
    """The program's own words with their measures in the shop's unit: `common practice: 0.098 to 0.118 in`.

    `first` is "mm" or "in". What stands in quotes is the maker's own, and stays; a millimetre shop's words stay too.
    """
    if first == "mm":
        return words
    parts = _QUOTED.split(words)
    return "".join(part if at % 2 else _turned(part) for at, part in enumerate(parts))


def own_words_in_shop_units(words: str, first: str) -> str:
    """The same for words that quote nothing of a maker's, such as the description of a key: their examples are put in
    the shop's unit as well.
    """
    if first == "in":
        for example, instead in _EXAMPLES.items():
            words = words.replace(example, instead)
    return in_shop_units(words, first)


def phrases_in_shop_units(words: str, first: str) -> str:
    """The same for phrases alone, in words with a maker's own names among them: `some hundredths of an inch`.

    A number with its unit stays, since it may be part of a name, such as a brace called 5 mm bar.
    """
    if first == "in":
        for said, instead in _IN_WORDS.items():
            words = words.replace(said, instead)
    return words


def _turned(words: str) -> str:
    return _MEASURES.sub(_in_inches, phrases_in_shop_units(words, "in"))


def _in_inches(found: re.Match[str]) -> str:
    one, unit = _UNITS[found["unit"]]
    numbers = [_number(float(each) / one, unit) for each in (found["least"], found["most"]) if each]
    return f"{' to '.join(numbers)} {unit}"


def _number(value: float, unit: str) -> str:
    """Inches to a thou or closer, without needless zeros; anything else to three digits."""
    if unit == "in":
        text = f"{value:.{inch_places(value * 25.4)}f}"
        return text.rstrip("0").rstrip(".")
    return f"{float(f'{value:.3g}'):.10g}"
