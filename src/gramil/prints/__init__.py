"""What every paper shows, and two states of it compared; the whole graph that it is read from."""
