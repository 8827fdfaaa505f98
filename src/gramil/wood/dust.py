"""What the dust of a wood does, by its species: from the species' table, and *not known* if no source says."""

from collections.abc import Mapping

from gramil.wood.species import Species
from gramil.wood.wood_words import named

NOT_KNOWN = "what it does is not known, which does not mean harmless"


def dust_of(wood: str, own: Mapping[str, Species] | None = None) -> str:
    """What is known of a wood's dust beyond what holds for all of them, the maker's `own` woods first."""
    found = named(wood, own)
    return NOT_KNOWN if found is None or found.dust is None else found.dust.text
