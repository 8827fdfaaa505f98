"""What is done with the whole graph: comparing two states, turning an input until a figure is met, reading back."""
