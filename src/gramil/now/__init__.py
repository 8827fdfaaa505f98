"""What can be done now, and in the weeks ahead: the work as a graph, what closes each operation, and plans over it."""
