"""What is kept for ever: the kinds of act, what the arguments of each hold, and states.

A line of ``kinds.txt`` is a kind, and each of its arguments with its type; ``=`` where it may be
missing; below them are the words that a field of a fact may hold. A new kind is a new line, and
a new argument, which may be missing, a new word. What a reading holds stands last. Nothing else in
it may change: shops have files that were written so.
"""

from dataclasses import is_dataclass
from pathlib import Path
from types import NoneType, UnionType
from typing import get_args, get_origin

from msgspec import Struct, structs

from station.bootstrap import load_rules
from station.ledger.bridge import MendHistory
from station.ledger.numbers import TAKE_BLOCK, TakeNumbers
from station.ledger.sound import LEFT_OUT
from station.shop.acts import Args, TakeBack
from station.shop.facts import KINDS
from station.shop.fields import choices, field_types
from station.shop.readings import KINDS as READ
from station.shop.readings import Reading

KEPT = Path(__file__).with_name("kinds.txt").read_text(encoding="utf-8")
ANY = {field.name for field in structs.fields(Args)}


def line(kind, args):
    """A kind as the file writes it."""
    own = [f for f in structs.fields(args) if args is Args or f.name not in ANY]
    words = [f"{f.encode_name}{'' if f.required else '='}:{spelt(f.type)}" for f in own]
    return " ".join([kind, *words])


def spelt(kind):
    """A type in few characters; a record of an act's own with its fields."""
    if isinstance(kind, UnionType):
        return "|".join("None" if w is NoneType else spelt(w) for w in get_args(kind))
    if within := get_args(kind):
        inner = ",".join(
            "..." if w is ... else w if isinstance(w, str) else spelt(w) for w in within
        )
        return f"{get_origin(kind).__name__}[{inner}]"
    if issubclass(kind, Struct) or hasattr(kind, "_fields"):
        fields = ",".join(f"{name}:{spelt(of)}" for name, of in kind.__annotations__.items())
        return f"{kind.__name__}({fields})"
    return kind.__name__


def test_no_kind_of_act_and_none_of_its_arguments_changes():
    table = {kind: rule.args for kind, rule in load_rules().items()}
    table |= {TakeBack.kind: TakeBack, TakeNumbers.kind: TAKE_BLOCK.args}
    table |= {MendHistory.kind: MendHistory}
    lines = [line(kind, args) for kind, args in sorted(table.items())]
    words = [text for kind in sorted(KINDS) for text in fields_of(KINDS[kind], kind)]
    read = [line("(reading)", Reading), f"reading.kind {' '.join(READ)}"]
    kept = [line("(any)", Args), f"({LEFT_OUT})", *lines, "", *words, "", *read]
    assert KEPT.splitlines() == kept


def fields_of(kind, name):
    """The fields that hold one of a few words, those of records within it as well."""
    for field, hint in field_types(kind).items():
        if words := choices(hint):
            yield f"{name}.{field} {' '.join(words)}"
        for inner in filter(is_dataclass, get_args(hint)):
            yield from fields_of(inner, f"{name}.{field}")


def test_a_kind_is_written_down_where_its_arguments_are():
    for kind, rule in load_rules().items():
        assert "kind" in vars(rule.args), rule.args
        assert rule.args.kind == kind
