"""From the trees of all files to one compiled base of plain values, with every problem found on the way."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import Any

from assistant.knowledge.base import ANSWERING, Compiled
from assistant.knowledge.fields import Shape, id_of, in_order, read_fields, read_record
from assistant.knowledge.problems import Problem, suggestion
from assistant.knowledge.readers import CANONICAL_UNITS, Reading
from assistant.knowledge.shapes import SHAPES, TYPE, WORD_GROUPS
from assistant.knowledge.shelf import Shelved
from assistant.knowledge.unread import may_list_units, may_stand
from assistant.knowledge.yaml_lines import Items, Node, Pairs, Text, plain

_OTHER_KEYS = ("type", "words", "units", "settings")


def compile_base(
    trees: Sequence[Node], unread: Mapping[str, str] = MappingProxyType({})
) -> tuple[Compiled, list[Problem]]:
    """The compiled base of some files, and what is wrong in them; broken records are left out.

    unread: what other files hold that could not be read, by their names; "" of one of which nothing is known.
    """
    unread = {**unread, **{tree.file: "" for tree in trees if not isinstance(tree, Pairs)}}
    units = tuple(text for file, text in unread.items() if may_list_units(file, text))
    reading = Reading(CANONICAL_UNITS | _unit_symbols(trees), [], units)
    compiled: Compiled = {
        "records": {key: Shelved() for key in SHAPES},
        "places": Shelved({key: {} for key in SHAPES}),
        "order": [],
        "type": [],
        "words": {},
        "units": [],
        "settings": {},
        "pronunciations": {},
        "phonemes": {},
        "radio_words": {},
        "labels": {},
        "respelt": {},
        "broken": [],
        "unread": list(unread.values()),
        "rule_lines": {},
    }
    for tree in trees:
        _read_file(tree, compiled, reading)
    _read_overrides(compiled, reading)
    return compiled, reading.problems


def _unit_symbols(trees: Sequence[Node]) -> frozenset[str]:
    found = set()
    for tree in trees:
        for key, value in tree.pairs if isinstance(tree, Pairs) else ():
            entries = plain(value) if key.text == "units" else []
            found |= {str(entry.get("symbol", "")) for entry in entries if isinstance(entry, dict)}
    return frozenset(found)


def _read_file(tree: Node, compiled: Compiled, reading: Reading) -> None:
    if not isinstance(tree, Pairs):
        reading.refuse(tree, "is not a mapping of lists", "begin with the key of a list, such as 'facts:'")
        return
    for key, value in tree.pairs:
        if key.text in SHAPES:
            _read_list(value, SHAPES[key.text], compiled, reading)
        elif key.text in _OTHER_KEYS:
            _OTHERS[key.text](key, value, compiled, reading)
        else:
            known = [*SHAPES, *_OTHER_KEYS]
            advice = suggestion(key.text, known, f"the keys are {', '.join(known)}")
            reading.refuse(key, f"unknown key '{key.text}'", advice)


def _read_list(value: Node, shape: Shape, compiled: Compiled, reading: Reading) -> None:
    if not isinstance(value, Items):
        reading.refuse(value, f"'{shape.key}' must be a list", "begin each entry with '- '")
        return
    for item in value.items:
        values = read_record(item, shape, reading)
        if values is not None:
            _add_record(item, values, shape, compiled, reading)
        else:
            compiled["broken"].append(id_of(item))


def _add_record(
    item: Node, values: dict[str, Any], shape: Shape, compiled: Compiled, reading: Reading
) -> None:
    name = values.get("id") or f"{values['variant']} {values['record']}"
    clashing = ANSWERING if shape.key in ANSWERING else (shape.key,)
    for kind in clashing:
        if name in compiled["records"][kind]:
            file, line = compiled["places"][kind][name]
            advice = f"it is also in {file}:{line}; rename or remove one"
            reading.refuse(item, f"{shape.one} '{name}' repeats an id", advice)
            return
    compiled["records"][shape.key][name] = in_order(shape.record, values)
    compiled["places"][shape.key][name] = [item.file, item.line]
    compiled["rule_lines"].update(_rule_lines(item, name))
    if shape.key in ANSWERING:
        compiled["order"].append(name)


def _rule_lines(item: Node, name: str) -> dict[str, list[int]]:
    """Where each rule of a record stands, since a table may be long."""
    for key, value in item.pairs if isinstance(item, Pairs) else ():
        if key.text == "rules" and isinstance(value, Items):
            return {name: [rule.line for rule in value.items]}
    return {}


def _read_overrides(compiled: Compiled, reading: Reading) -> None:
    """Second pass: a variant's fields are read as fields of the record that they replace."""
    kept = {}
    for name, values in compiled["records"]["overrides"].items():
        record, node = values[1], values[2]
        kind = next((kind for kind in ANSWERING if record in compiled["records"][kind]), "")
        if not kind and (record in compiled["broken"] or may_stand(record, compiled["unread"])):
            continue
        if not kind:
            known = compiled["order"]
            advice = suggestion(record, known, "name a record of this type")
            reading.refuse(node, f"override '{name}' changes the unknown record '{record}'", advice)
            continue
        fields = [field for field in SHAPES[kind].fields if field.name not in ("id", "source")]
        found = read_fields(node, fields, f"override '{name}'", reading, partial=True)
        if found is not None:
            kept[name] = [*values[:2], [[key, value] for key, value in found.items()], *values[3:]]
    compiled["records"]["overrides"] = Shelved(kept)


def _read_type(key: Text, value: Node, compiled: Compiled, reading: Reading) -> None:
    values = read_record(value, TYPE, reading)
    if compiled["type"]:
        reading.refuse(key, "describes a second type", "keep one 'type:' in a type's folder")
    elif values is not None:
        compiled["type"] = in_order(TYPE.record, values)
        compiled["places"]["type"] = {values["id"]: [key.file, key.line]}


def _read_words(key: Text, value: Node, compiled: Compiled, reading: Reading) -> None:
    found = WORD_GROUPS.read(value, "'words'", reading)
    if isinstance(found, list):
        for name, words in found:
            compiled["words"].setdefault(name, []).extend(words)


def _read_units(key: Text, value: Node, compiled: Compiled, reading: Reading) -> None:
    if isinstance(value, Items):
        compiled["units"].extend(plain(value))
    else:
        reading.refuse(value, "'units' must be a list", "begin each entry with '- '")


def _read_mapping(key: Text, value: Node, compiled: Compiled, reading: Reading) -> None:
    if not isinstance(value, Pairs):
        reading.refuse(value, f"'{key.text}' must be a mapping", "write 'name: value' for each")
        return
    for name, given in value.pairs:
        if name.text in compiled[key.text]:
            reading.refuse(
                name, f"'{name.text}' of '{key.text}' is in another file too", "keep one of the two"
            )
        compiled[key.text].setdefault(name.text, plain(given))


_OTHERS = {
    "type": _read_type,
    "words": _read_words,
    "units": _read_units,
    "settings": _read_mapping,
}
