"""The bevels' three templates on their pages: each still says what it is, by itself, on every paper."""

from math import dist

import pytest
from tests.drawings.conftest import figures_for

from gramil.formatter import Formatter
from gramil.writers.lettering import Lettering
from gramil.writers.pdf import laid_out
from gramil.writers.plain import plain
from gramil.writers.whole_words import shown_whole

OTHER = 30.0
"""In mm: the templates' names are drawn further from one another than this."""


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("hand", ["left", "right"])
def test_no_name_is_lost_or_moved_to_another_template(paper: str, hand: str) -> None:
    figures = figures_for("corrie", ('handed = "left"', f'handed = "{hand}"'))
    drawing, text = figures["drawing_bevel_arm"], Formatter(figures, "mm").text
    (template,) = laid_out([drawing], text, paper)
    drawn = {each.text: each.at for each in plain(drawing, text) if isinstance(each, Lettering)}
    shown = {
        each.text: each.at
        for each in template.marks
        if isinstance(each, Lettering) and any(shown_whole(each, tile) for tile in template.tiling.tiles)
    }
    assert len(drawn) == 9
    assert max(dist(at, shown[said]) for said, at in drawn.items()) < OTHER / 2
    names = [at for said, at in drawn.items() if said.startswith("arm bevel:")]
    assert min(dist(one, other) for row, one in enumerate(names) for other in names[:row]) > OTHER
