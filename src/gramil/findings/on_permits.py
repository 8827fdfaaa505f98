"""Verdicts on the trade in the instrument's woods: which are protected, and for which the species must be asked."""

import math

from gramil import names as n
from gramil.description.records import Stuff
from gramil.findings.finding import Finding, Findings, Severity
from gramil.findings.threshold import not_judged
from gramil.reference import Says, joined, says

OWNS = ("finding_",)

NAME = "protected wood"
ASK = "Ask its seller for the species and for its papers, and keep both; or take a wood that is not listed."
TO_KNOW = (
    "Say what wood they are of, by its botanical name if the trade's is not known here, or that they are of plastic; "
    "then it is judged."
)
SEVERITY: dict[str, Severity] = {"listed": "caution", "ask": "note"}


def finding_permits(stuff_list: tuple[Stuff, ...]) -> Findings:
    """Whether the woods of the instrument are listed as protected, by the dated table of species.

    One finding for each wood, at the first part for which it is used.
    """
    parts = {each.wood: each for each in reversed(stuff_list)}
    protected = [_protected(each) for each in reversed(parts.values()) if each.standing in SEVERITY]
    unknown = [each for each in reversed(parts.values()) if each.standing in ("not known", "not said") and each.wood]
    found = (*protected, *((_unknown(unknown),) if unknown else ()))
    return found or (_none(),)


def _protected(part: Stuff) -> Finding:
    at = n.stuff_list[part.name]
    return Finding(f"{NAME}, {part.name}", SEVERITY[part.standing], at.wood, math.nan, None, says("{}", at.permit), ASK)


def _unknown(parts: list[Stuff]) -> Finding:
    woods = joined("; ", map(_called, parts))
    because = "because whether these are protected is not known: " + woods
    return not_judged(NAME, n.stuff_list[parts[0].name].wood, because, TO_KNOW)


def _called(part: Stuff) -> Says:
    """A binding of which nothing is said is treated as plastic, and is not called so."""
    at = n.stuff_list[part.name]
    return says("{}, not said what of", at.name) if part.doubt and part.standing == "not said" else says("{}", at.wood)


def _none() -> Finding:
    says_so = (
        "None of its woods is listed, as far as that was looked up; national timber laws may still ask for papers."
    )
    return Finding(NAME, "fine", n.stuff_list["board"].wood, math.nan, None, says_so)
