"""The bench: all of it in a browser beside the vice. Pages ask the graph and the store; nothing is worked out here."""
