"""Whether a picture is whole: a lens looks through the middle of what it takes, and no longer through that of a part.

Pictures cut on one side by some sixth put the solved middle of the lens beside the picture's by more than any phone's
does; how far depends on how much the picture says about it, so a small cut may pass, and does little harm.
"""

import numpy as np

from gramil.faults import MakersFault
from gramil.photographs.solving import Solved

BESIDE_TOLD, BESIDE_REFUSED = 0.022, 0.045
"""The lens's middle beside the picture's, as a share of half the diagonal; whole rendered pictures reach 0.016."""


def cropped(answer: Solved) -> tuple[str, ...]:
    """A sentence for each picture that seems cropped. Raises MakersFault for one that is cropped by much."""
    told = []
    for number, picture in enumerate(answer.pictures):
        middle = (np.array(picture.size) - 1) / 2
        beside = float(np.hypot(*(answer.camera(number).lens[1:3] - middle)) / np.hypot(*middle))
        if beside > BESIDE_REFUSED:
            raise MakersFault.of(
                "the picture was cropped",
                "the lens did not look through its middle, and how it bends is told from there",
                "Send it whole, as it was taken",
            )
        if beside > BESIDE_TOLD:
            told.append("The picture seems cropped, or straightened: send it whole, as it was taken")
    return tuple(told)
