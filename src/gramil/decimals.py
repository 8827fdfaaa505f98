"""Numbers as text with a given number of decimals, never minus zero: a sign on zero would mislead."""


def plus_zero(text: str) -> str:
    """A number's text, without the minus sign if it is rounded to zero."""
    return text[1:] if text.startswith("-") and not text.strip("-0.") else text


def fixed(value: float, places: int) -> str:
    """Rounded to this many decimals: `1.20`, `-0.35`, `0.00`."""
    return plus_zero(f"{value:.{places}f}")


def signed(value: float, places: int) -> str:
    """The same with its sign, if it has one: `+1.20`, `-0.35`, `0.00`."""
    text = fixed(value, places)
    return f"+{text}" if value > 0 and text.strip("0.") else text
