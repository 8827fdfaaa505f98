"""Writers: marks to the files that a maker opens, prints or cuts by; the same marks give the same bytes."""
