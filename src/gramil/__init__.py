"""Gramil: one description of a guitar, and every dimension that follows from it.

For programs: `gramil.read("tarn.toml", shop="shop.toml")`; see `gramil.api`, which is loaded when it is used.
"""

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from gramil.api import Figure, Guitar, MakersFault, Picture, read, shift

__version__ = "0.2.0"
__all__ = ["Figure", "Guitar", "MakersFault", "Picture", "read", "shift"]


def __getattr__(name: str) -> Any:
    """The names of `gramil.api`, loaded on use, so that a command that asks for none does not wait for them."""
    if name not in __all__:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    from gramil import api

    return getattr(api, name)
