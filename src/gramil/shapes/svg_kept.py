"""What is read of an SVG drawing: its shapes and groups with the attributes that place them, bounded before any opens.

Pictures, colours, fonts, masks and clips are left out. A shape counts as often as `use` shows it, with the letters of
its path and of the transforms about it, since they are read as often.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from xml.etree import ElementTree

from gramil.shapes.drawn_limits import (
    MOST_DEEP,
    MOST_ELEMENTS,
    MOST_LETTERS,
    MOST_SHAPES,
    hold_digits,
    hold_number,
    too_much,
)

Element = ElementTree.Element
GROUPS = ("svg", "g", "defs", "symbol", "use", "a", "switch")
SHAPES = ("path", "rect", "circle", "ellipse", "line", "polyline", "polygon")
PLACED = ("id", "class", "transform", "display", "visibility", "viewBox", "preserveAspectRatio", "width", "height")
DRAWN = ("d", "points", "x", "y", "rx", "ry", "cx", "cy", "r", "x1", "y1", "x2", "y2")
PLACING = frozenset((*PLACED, *DRAWN))
NUMBERS = PLACING - {"id", "class"}
LINKS = ("href", "{http://www.w3.org/1999/xlink}href")
MOST_STYLE = 2000
"""Letters of a style sheet that say what shows and where: most sheets have none."""
MOST_SEGMENTS = 60_000
"""Lines and curves of all paths."""
ARITY = {"m": 2, "l": 2, "t": 2, "h": 1, "v": 1, "s": 4, "q": 4, "c": 6, "a": 7}
ROUND = {"rect": 8, "circle": 4, "ellipse": 4, "line": 1}
"""Lines and curves that a shape is drawn with."""
_ENTITY = re.compile(r"<!ENTITY\s+(%|[^\s%\"']+)\s*(?:\"([^\"]*)\"|'([^']*)')?")
_TRANSFORM = re.compile(r"[^()]*(?:\([^()]*\)[^()]*)*")
_STEPS = re.compile(r"([MmLlHhVvCcSsQqTtAa])([^MmLlHhVvCcSsQqTtAaZz]*)")
_NUMBER = re.compile(r"[0-9]+")


@dataclass
class _Amount:
    """What a part of a drawing shows: shapes, letters read for them, and the lines and curves of paths."""

    shapes: int = 0
    letters: int = 0
    segments: int = 0

    def add(self, other: "_Amount") -> None:
        self.shapes += other.shapes
        self.letters += other.letters
        self.segments += other.segments


@dataclass
class _Counting:
    """A drawing's elements by id, and what has been counted."""

    by_id: dict[str, Element]
    sheet: int
    file: str | None
    known: dict[str, _Amount] = field(default_factory=dict)


def hold_text(text: str, file: str | None) -> None:
    """Raises MakersFault for a text with too many elements, or whose entities would make it another one."""
    hold_number(text.count("<"), MOST_ELEMENTS, "elements", file)
    longer = 0
    for name, double, single in _ENTITY.findall(text):
        value = double or single
        if name == "%" or "&" in value.replace("&#", ""):
            raise too_much("entities in it are made of entities", file)
        longer += len(value) * text.count(f"&{name};")
    hold_number(longer, MOST_LETTERS, "letters in its entities", file)


def kept(root: Element, file: str | None) -> Element:
    """The drawing with nothing but what is read. Raises MakersFault where that is more than a plan can have."""
    style = _style_kept(root)
    hold_number(len(style), MOST_STYLE, "letters in its style sheet", file)
    drawing = _kept(root, file, 0)
    if style:
        sheet = ElementTree.Element(f"{_space(root)}style")
        sheet.text = style
        drawing.insert(0, sheet)
    every = list(drawing.iter())
    read = sum(len(value) for each in every for value in each.attrib.values())
    hold_number(read, MOST_LETTERS, "letters in its shapes", file)
    by_id = {name: each for each in every if (name := each.get("id"))}
    _hold_all(_amount(drawing, _Counting(by_id, len(style) if "transform" in style else 0, file), 0, ()), file)
    return drawing


def _hold_all(amount: _Amount, file: str | None) -> None:
    hold_number(amount.shapes, MOST_SHAPES, "shapes, counted as often as they show", file)
    hold_number(amount.letters, 3 * MOST_LETTERS, "letters in its shapes, counted as often as they show", file)
    hold_number(amount.segments, MOST_SEGMENTS, "lines and curves, counted as often as they show", file)


def local(tag: object) -> str:
    """A tag or key without its name space; nothing for a comment."""
    return tag.rpartition("}")[2] if isinstance(tag, str) else ""


def _space(root: Element) -> str:
    return root.tag[: -len(local(root.tag))]


def _kept(element: Element, file: str | None, depth: int) -> Element:
    if depth > MOST_DEEP:
        raise too_much(f"groups lie too deep in groups: more than {MOST_DEEP}", file)
    new = ElementTree.Element(element.tag, dict(_attributes(element, file)))
    for each in element:
        if local(each.tag) in GROUPS or local(each.tag) in SHAPES:
            new.append(_kept(each, file, depth + 1))
    return new


def _attributes(element: Element, file: str | None) -> Iterator[tuple[str, str]]:
    for key, value in element.attrib.items():
        name, words = local(key), " ".join(value.split())
        if name == "label" and name != key:
            yield "{label}label", words
        elif name == "style":
            if placing := _declarations(words):
                yield key, _checked_transform(placing, file)
        elif key in LINKS or key in PLACING:
            hold_digits(words if key in NUMBERS else "", file)
            yield key, _checked_transform(words, file) if name == "transform" else words


def _checked_transform(words: str, file: str | None) -> str:
    """As it stands; one with a bracket that is not closed would be searched to its end from each of its words."""
    if _TRANSFORM.fullmatch(words):
        return words
    raise too_much("a transform in it has a bracket that is not closed", file)


def _declarations(style: str) -> str:
    """Of a style, what says whether a shape shows and where."""
    said = [each.split(":") for each in style.split(";")]
    placing = [each for each in said if len(each) == 2 and each[0].strip() in ("display", "visibility", "transform")]
    return ";".join(f"{key.strip()}:{value.strip()}" for key, value in placing)


def _style_kept(root: Element) -> str:
    """Of all style sheets, the rules that say whether a shape shows and where."""
    text = "".join(each.text or "" for each in root.iter() if local(each.tag) == "style")
    rules = [each.rpartition("{") for each in _without_comments(text).split("}")]
    found = [(" ".join(selector.split()), _declarations(body)) for selector, brace, body in rules if brace]
    return "".join(f"{selector}{{{body}}}" for selector, body in found if selector and body)


def _without_comments(text: str) -> str:
    first, *rest = text.split("/*")
    return first + "".join(each.partition("*/")[2] for each in rest)


def _amount(element: Element, counting: _Counting, above: int, about: tuple[str, ...]) -> _Amount:
    """What an element shows, under `above` letters of transforms."""
    if len(about) > MOST_DEEP:
        raise too_much(f"groups lie too deep in groups: more than {MOST_DEEP}", counting.file)
    above += len(element.get("transform", "")) + len(element.get("style", "")) + counting.sheet
    found = _Amount()
    if local(element.tag) in SHAPES:
        found = _of_shape(element, above)
    elif local(element.tag) == "use":
        found.add(_of_use(element, counting, above, about))
    for each in element:
        found.add(_amount(each, counting, above, about))
    return found


def _of_shape(element: Element, above: int) -> _Amount:
    path, points = element.get("d", ""), element.get("points", "")
    steps = [(ARITY[command.lower()], len(_NUMBER.findall(numbers))) for command, numbers in _STEPS.findall(path)]
    segments = sum(-(-count // arity) for arity, count in steps) + path.lower().count("z")
    return _Amount(
        1,
        len(path) + len(points) + above,
        segments + len(_NUMBER.findall(points)) // 2 + ROUND.get(local(element.tag), 0),
    )


def _of_use(element: Element, counting: _Counting, above: int, about: tuple[str, ...]) -> _Amount:
    """What a `use` shows: counted once for each that is used, and its transforms with every shape of it."""
    name = next((element.attrib[key] for key in LINKS if key in element.attrib), "")[1:]
    if name not in counting.by_id:
        return _Amount()
    if name in about:
        raise too_much("a shape in it uses itself", counting.file)
    if name not in counting.known:
        counting.known[name] = _amount(counting.by_id[name], counting, 0, (*about, name))
    inner = counting.known[name]
    return _Amount(inner.shapes + 1, inner.letters + above * inner.shapes, inner.segments)
