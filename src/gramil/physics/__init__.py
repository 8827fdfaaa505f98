"""Physics of strings, beams, plates and air: plain functions of numbers, with their sources."""
