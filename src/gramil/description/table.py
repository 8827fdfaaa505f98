"""What every table of a description is."""

from pydantic import BaseModel, ConfigDict


class Table(BaseModel):
    """A table of a description: nothing in it may be misspelt, and it does not change once read."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True, defer_build=True)
