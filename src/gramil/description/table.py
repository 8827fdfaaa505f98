"""What every table of a description is."""

from pydantic import BaseModel, ConfigDict


class Table(BaseModel):
    """A table of a description: unknown keys are refused, and it does not change once read."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True, defer_build=True)
