"""Drawings as marks: what is drawn where, in millimetres at true scale, each figure on them an address."""
