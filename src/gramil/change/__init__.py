"""The whole graph, and what is done with it: shift, turning an input until a figure is met, readback."""
