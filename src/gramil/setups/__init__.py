"""Part by tool: what to set on this shop's saws, cutters and jigs, operation by operation, as data for sheets."""
