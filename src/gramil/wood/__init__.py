"""Wood and its moisture: what a kind of wood is, what the air makes of it, and what holding it still costs."""
