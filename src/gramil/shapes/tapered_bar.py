"""A bar whose rounded section changes along it: profiles at stations, and straight lines between them."""

from dataclasses import dataclass

import numpy as np

from gramil.quantities import Mm
from gramil.shapes.profile import Profile, between


@dataclass(frozen=True)
class TaperedBar:
    """`places` grow along the bar, mm, two or more; `profiles` are its sections there. Beyond its ends it goes on."""

    places: tuple[Mm, ...]
    profiles: tuple[Profile, ...]

    def at(self, x: Mm) -> Profile:
        """The section at x; before the first place or after the last, that of the end."""
        row = int(np.clip(np.searchsorted(self.places, x, side="right") - 1, 0, len(self.places) - 2))
        start, end = self.places[row], self.places[row + 1]
        share = float(np.clip((x - start) / (end - start), 0.0, 1.0))
        return between(self.profiles[row], self.profiles[row + 1], share)


def room_under(profile: Profile, half_width: Mm, depth: Mm) -> Mm:
    """Least distance from a channel's bottom corner to the profile, mm; negative where the channel breaks through.

    The channel hangs from the flat in the middle: `half_width` to either side of it, `depth` deep.
    """
    if half_width >= profile.half_width:
        return profile.half_width - half_width - depth
    curve = profile.points(4001, from_the_middle=True)  # the nearest point is on the corner's own side
    near = float(np.hypot(curve[:, 0] - half_width, curve[:, 1] - depth).min())
    return near if float(profile.depth_at(half_width)) >= depth else -near
