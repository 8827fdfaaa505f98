"""The board's scale as the maker writes it: its temperament, and tables of pitches in the open Scala form."""
