"""The instrument, part by part: each module settles one part, each function in it is one dimension."""
