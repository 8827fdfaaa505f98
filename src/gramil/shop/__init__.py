"""The shop's work, stock and tools: operations and what is done of them, blanks, parts, settings, instruments."""
