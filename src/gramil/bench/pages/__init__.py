"""The pages of the bench, one to a module: what is shown at an address, and what a form on it does."""
