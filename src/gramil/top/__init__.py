"""The top under the strings, solved as a braced plate: what it gives, how it swings, what a shaving does.

It is on the graph, and derived only when it is asked for: `prints/solved.py` adds it to the figures.
"""
