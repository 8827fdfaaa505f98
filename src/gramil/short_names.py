"""Short names for figures, no two alike if their descriptions allow it."""

import re
from collections import Counter
from collections.abc import Mapping


def short_names(descriptions: Mapping[str, str]) -> Mapping[str, str]:
    """For each name, a short form of its description: up to the first comma or, where others begin alike, the first
    sentence without what stands in brackets.
    """
    begins = {name: re.split(r"[,.;:(]", words, maxsplit=1)[0].strip() for name, words in descriptions.items()}
    count = Counter(begins.values())
    return {name: words if count[words] == 1 else _sentence(descriptions[name]) for name, words in begins.items()}


def _sentence(descriptions: str) -> str:
    """The first sentence, as far as its first stop, without what stands in brackets."""
    return " ".join(re.split(r"[.;:]", re.sub(r" \([^)]*\)", "", descriptions), maxsplit=1)[0].split())
