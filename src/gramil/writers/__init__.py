"""Writers: marks to the files that a maker opens, prints or cuts by, the same bytes for the same marks."""
