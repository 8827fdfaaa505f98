"""What a maker does to the record: each act one change of the store, with its checks, taken back by one undo."""
