"""What is written correctly about the body's bindings but impossible: purfling with nothing to lie against, edges that
meet.

Run with those of `checks_of_body.py`. Whether the channels leave enough wood is a finding: it is judged, not refused.
"""

from collections.abc import Callable, Iterator, Sequence

from gramil.description.body.tables import Body, EdgeBinding
from gramil.description.neck.tables import Top
from gramil.description.problems import Problem
from gramil.faults import MakersFault
from gramil.shapes.offset import moved_in
from gramil.shapes.outline import Outline

Outlines = tuple[Outline, ...]


def bindings_have_a_body(
    outlines: Outlines, body: Body, top_binding: EdgeBinding, back_binding: EdgeBinding
) -> Iterator[Problem]:
    """There is an edge to bind."""
    if outlines or any((body.outline, body.points, body.file)):
        return
    for table, binding in _both(top_binding, back_binding):
        if binding.thickness > 0:
            yield Problem((table,), "there is no body to bind", "a body: give [body] an outline, points or a file")


def purfling_lies_against_binding(top_binding: EdgeBinding, back_binding: EdgeBinding) -> Iterator[Problem]:
    """Purfling has a binding outside it, and is not deeper than the binding."""
    for table, binding in _both(top_binding, back_binding):
        if not binding.purfling:
            continue
        if not binding.thickness:
            yield Problem((table, "purfling"), "there is no binding outside it", "give the binding's thickness too")
        elif binding.purfling_depth >= binding.height:
            yield Problem(
                (table, "purfling_depth"),
                f"read {binding.purfling_depth:g} mm",
                f"less than the binding's height, {binding.height:g} mm",
            )


def bindings_follow_the_outline(
    outlines: Outlines, top_binding: EdgeBinding, back_binding: EdgeBinding
) -> Iterator[Problem]:
    """Binding and purfling go round the outline in one piece."""
    for outline in outlines:
        for table, binding in _both(top_binding, back_binding):
            try:
                moved_in(outline, binding.thickness + binding.purfling)
            except MakersFault as error:
                for each in error.faults:
                    yield Problem((table, "thickness"), each.what, each.why, each.remedy)


def bindings_leave_side(body: Body, top: Top, top_binding: EdgeBinding, back_binding: EdgeBinding) -> Iterator[Problem]:
    """Both bindings fit on the edge one above the other."""
    if not (top_binding.thickness and back_binding.thickness):
        return
    both = top_binding.height + back_binding.height
    edge = min(body.depth_neck, body.depth_tail) + top.thickness + body.back_thickness
    if both >= edge:
        yield Problem(
            ("back_binding", "height"),
            f"both bindings are {both:g} mm high together",
            f"less than side and plates at the shallower end, {edge:g} mm",
        )


def _both(top: EdgeBinding, back: EdgeBinding) -> tuple[tuple[str, EdgeBinding], tuple[str, EdgeBinding]]:
    return (("top_binding", top), ("back_binding", back))


EDGE_CHECKS: Sequence[Callable[..., Iterator[Problem]]] = (
    bindings_have_a_body,
    purfling_lies_against_binding,
    bindings_follow_the_outline,
    bindings_leave_side,
)
