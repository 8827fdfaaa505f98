"""What the sheets of the body's bindings say of its bevels; nothing if it has none."""

from gramil import names as n
from gramil.parts.bevel_records import BevelBinding
from gramil.reference import Text, says

NO_EDGE = "the bearing has no edge to ride on there. Lift the cutter out before it"


def at_bevels(bindings: tuple[BevelBinding, ...]) -> tuple[Text, ...]:
    """Where the channels stop, or are led along a bevel's lines by hand."""
    return tuple(_channel(each) for each in bindings)


def _channel(binding: BevelBinding) -> Text:
    at, lines = n.bevel_list[binding.name], _lines(binding)
    then = f"along the bevel's {lines} cut it by hand" if lines else "end the channel square with a chisel"
    return says(
        f"From {{}} to {{}} from the neck lies the {binding.name} bevel, on the bass side: {NO_EDGE}, and {then}.",
        at.start,
        at.stop,
    )


def strips_at_bevels(bindings: tuple[BevelBinding, ...]) -> tuple[Text, ...]:
    """How the strips end at a bevel, or are led round it."""
    return tuple(_strip(each) for each in bindings)


def _strip(binding: BevelBinding) -> Text:
    at, lines = n.bevelled_bindings[binding.name], _lines(binding)
    ends = f"mitre both into the one along the bevel's {lines}, bent beforehand" if lines else "butt both against it"
    return says(
        f"At the {binding.name} bevel the bass strip is in two, {{}} from the neck and {{}} from the tail: {ends}.",
        at.before,
        at.after,
    )


def _lines(binding: BevelBinding) -> str:
    """Along which of a bevel's lines a strip is led; empty where the binding stops."""
    named = (("line on the plate", binding.on_plate), ("line on the side", binding.on_side))
    return " and its ".join(name for name, length in named if length)
