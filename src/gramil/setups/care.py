"""Cautions that hang on the wood: what its dust may do, and papers where some of its kind are protected."""

OWNS = ("care_",)

EBONIES = ("persimmon", "diospyros")
SENSITISERS = ("rosewood", "cocobolo", "blackwood", "ebony", "cedar", "mahogany", "iroko", "teak", "walnut", "maple")
LISTED = ("rosewood", "cocobolo", "dalbergia", "ebony", "diospyros", "blackwood", "mahogany", "cedrela")


def care_dust(board_wood: str) -> str:
    """What the dust of the board's wood may do to skin and lungs.

    Method: by the words in the wood's name; all wood dust harms in quantity.
    Source: written answer on timbers, UK Parliament, 2 August 1978; OSHA chemical sampling information, wood dust.
    """
    keep = "Extraction at the tool and a respirator."
    if _names(board_wood, EBONIES):
        return (
            f"Dust of {board_wood}: a Diospyros, the genus of the ebonies. Treat it as a possible sensitiser of skin "
            f"and lungs. {keep}"
        )
    if _names(board_wood, SENSITISERS):
        return f"Dust of {board_wood}: woods of this name may irritate or sensitise skin and lungs. {keep}"
    return f"Dust of {board_wood}: fine dust of any wood harms. {keep}"


def care_papers(board_wood: str) -> str:
    """Whether some species sold by the wood's name are protected in trade; empty where none is known to be.

    Method: by the words in the wood's name.
    Source: CITES appendices, from memory: look up the current ones.
    """
    if not _names(board_wood, LISTED):
        return ""
    return (
        f"Some species sold as {board_wood} are protected: papers before a blank is sold or crosses a border. "
        "Local law comes first."
    )


def _names(wood: str, words: tuple[str, ...]) -> bool:
    return any(word in wood.lower() for word in words)
