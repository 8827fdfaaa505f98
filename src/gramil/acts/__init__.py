"""What a maker does to the record: each act is one change to the store, with its checks, and one undo takes it back."""
