"""The air of the shop's places and the moisture of its pieces: what was read, what it means for the wood, and what work
it allows.
"""
