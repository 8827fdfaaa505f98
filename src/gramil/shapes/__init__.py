"""Lines, outlines and surfaces: plane geometry that belongs to no trade."""
