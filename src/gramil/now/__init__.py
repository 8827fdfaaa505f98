"""What can be done now, and in the weeks ahead: the work as a graph, what each operation waits for, and plans."""
