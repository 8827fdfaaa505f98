"""What a plan gives of a guitar, typed, drawn or traced alike, and a description with it in."""
