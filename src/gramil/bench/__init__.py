"""The bench: the whole program in a browser beside the vice. Pages ask the graph and the store; nothing is calculated
here.
"""
