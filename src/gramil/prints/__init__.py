"""What every paper shows, two states of it compared, and the whole graph from which it is read."""
