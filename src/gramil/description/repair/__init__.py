"""A guitar that came in: what is to be done to it, and what of it need not be known."""
