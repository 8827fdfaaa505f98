"""Numbers as text with so many decimals, never as minus zero: a sign on nothing says something that is not so."""


def plus_zero(text: str) -> str:
    """A number's text without the minus of one that is rounded to nothing."""
    return text[1:] if text.startswith("-") and not text.strip("-0.") else text


def fixed(value: float, places: int) -> str:
    """Rounded to so many decimals: `1.20`, `-0.35`, `0.00`."""
    return plus_zero(f"{value:.{places}f}")


def signed(value: float, places: int) -> str:
    """The same with its sign, where it has one: `+1.20`, `-0.35`, `0.00`."""
    text = fixed(value, places)
    return f"+{text}" if value > 0 and text.strip("0.") else text
