"""Typeset sheets for the bench: one operation to a page, figures large enough to read at arm's length."""
