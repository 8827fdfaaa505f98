"""The schemas of every answer and of both descriptions, by the names of their files."""

import json
from collections.abc import Mapping
from typing import Any

from pydantic.json_schema import GenerateJsonSchema, JsonSchemaValue
from pydantic_core import core_schema

from gramil.answers import record
from gramil.answers.acts import FileAnswer, Packed, acted
from gramil.answers.air import AirShow, IfGlued, Ready
from gramil.answers.answer import adapter_of
from gramil.answers.changes import ShiftAnswer, Turn
from gramil.answers.figures import Dims, Why
from gramil.answers.noted import SheetAnswer, WorkNoted
from gramil.answers.readings import OldBoardRead, SetUpRead, SlotsRead
from gramil.answers.tap import Tap
from gramil.answers.top import TopAnswer
from gramil.answers.traced import Trace
from gramil.answers.verdicts import Check, Checks
from gramil.answers.wood import Match, Wood, Woods
from gramil.answers.work import CostAnswer, Now, Weeks
from gramil.description.schema import instrument_schema, shop_schema

ANSWERS: Mapping[str, Any] = {
    "air show": AirShow,
    "book": Packed,
    "check": Check | Checks,
    "cost": CostAnswer,
    "dims": Dims,
    "if-glued": IfGlued,
    "match": Match,
    "now": Now,
    "pack": Packed,
    "readback old-board": OldBoardRead,
    "readback setup": SetUpRead,
    "readback slots": SlotsRead,
    "ready": Ready,
    "schema": Packed,
    "shift": ShiftAnswer,
    "tap": Tap,
    "top": TopAnswer,
    "trace": Trace,
    "turn": Turn,
    "weeks": Weeks,
    "why": Why,
    "wood": Wood | Woods,
}
"""What each command that only tells something tells with --json."""
ACTS: Mapping[str, Any] = {
    "air log": record.LogRead,
    "air read": record.MeterRead,
    "air outlook": record.OutlookKept,
    "done": WorkNoted,
    "sheet": tuple[SheetAnswer, ...],
    "store anew": record.BegunAnew,
    "store backup": record.CopyMade,
    "store export": tuple[FileAnswer, ...],
    "store import": record.FilesBrought,
    "store jig": record.JigChecked,
    "store join": record.Counted,
    "store lay": record.Lies,
    "store mark": record.Marked,
    "store measured": record.MeasuredAnew,
    "store new": record.FilesBrought,
    "store not-done": record.OpenAgain,
    "store operations": record.OwnList,
    "store part": record.PartKept,
    "store strike": record.StruckOff,
    "store place": record.PlaceKnown,
    "store reading": record.ReadAnew,
    "store restore": record.PutBack,
    "store return": record.Returned,
    "store sheets": record.HandedOut,
    "store split": record.Cut,
    "store undo": record.ChangeAnswer,
    "store upgrade": record.Upgraded,
    "store verify": record.Proved,
}
"""What each command did that does something and says so."""
TOLD: Mapping[str, Any] = {**ANSWERS, **{name: acted(did) for name, did in ACTS.items()}}
"""What every command tells."""
DESCRIPTIONS = {"instrument.schema.json": instrument_schema, "shop.schema.json": shop_schema}
"""The schemas that editors need, by file name."""


class _Shapes(GenerateJsonSchema):
    """A number may be `null`: not known, or without end."""

    def float_schema(self, schema: core_schema.FloatSchema) -> JsonSchemaValue:
        return {"type": ["number", "null"]}


def answer_schema(command: str) -> dict[str, Any]:
    """The schema of a command's answer."""
    found = adapter_of(TOLD[command]).json_schema(mode="serialization", schema_generator=_Shapes)
    return {"$schema": _Shapes.schema_dialect, **found, "title": f"gramil {command} --json"}


def schema_files(answers: bool = True) -> Mapping[str, str]:
    """Every schema as a file's text, by name; those of the descriptions alone without `answers`."""
    found = {name: made() for name, made in DESCRIPTIONS.items()}
    if answers:
        found |= {f"answer-{command.replace(' ', '-')}.schema.json": answer_schema(command) for command in TOLD}
    return {name: json.dumps(each, indent=1, ensure_ascii=False) + "\n" for name, each in found.items()}
