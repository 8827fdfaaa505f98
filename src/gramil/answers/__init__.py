"""Answers for programs: what each command tells, as records that become JSON; their shapes are told by schemas."""
