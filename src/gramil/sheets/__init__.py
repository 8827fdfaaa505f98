"""Typeset sheets for the bench: one operation a page, figures large enough to read at arm's length."""
