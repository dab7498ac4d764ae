"""A judge of JSON Schema that knows just the words our schema uses, and stops at one that it does not know."""

from typing import Any

TYPES: dict[str, tuple[type, ...]] = {
    "object": (dict,),
    "array": (list,),
    "string": (str,),
    "boolean": (bool,),
    "null": (type(None),),
    "integer": (int,),
    "number": (int, float),
}
SILENT = {"$schema", "$defs", "title", "description", "default", "discriminator"}


def faults(value: Any, schema: dict[str, Any], whole: dict[str, Any], path: str = "$") -> list[str]:
    """Where a value is not what the schema says; `whole` holds the definitions. KeyError for a word not known here."""
    found: list[str] = []
    for word, said in schema.items():
        if word not in SILENT:
            found += JUDGES[word](value, said, schema, whole, path)
    return found


def _ref(value: Any, said: str, _: Any, whole: dict[str, Any], path: str) -> list[str]:
    return faults(value, whole["$defs"][said.removeprefix("#/$defs/")], whole, path)


def _any_of(value: Any, said: list[Any], _: Any, whole: dict[str, Any], path: str) -> list[str]:
    found = [faults(value, one, whole, path) for one in said]
    return [] if any(not one for one in found) else min(found, key=len)


def _type(value: Any, said: str, _: Any, __: Any, path: str) -> list[str]:
    fits = isinstance(value, TYPES[said]) and (said == "boolean" or not isinstance(value, bool))
    return [] if fits else [f"{path}: no {said}"]


def _enum(value: Any, said: list[Any], _: Any, __: Any, path: str) -> list[str]:
    return [] if any(value == one and type(value) is type(one) for one in said) else [f"{path}: not one of {said}"]


def _minimum(value: Any, said: float, _: Any, __: Any, path: str) -> list[str]:
    return [f"{path}: below {said}"] if isinstance(value, int | float) and value < said else []


def _required(value: Any, said: list[str], _: Any, __: Any, path: str) -> list[str]:
    return [f"{path}: no {name}" for name in said if isinstance(value, dict) and name not in value]


def _properties(value: Any, said: dict[str, Any], _: Any, whole: dict[str, Any], path: str) -> list[str]:
    held = value if isinstance(value, dict) else {}
    return [
        one for name in held.keys() & said.keys() for one in faults(held[name], said[name], whole, f"{path}.{name}")
    ]


def _strangers(value: Any, said: bool, schema: dict[str, Any], __: Any, path: str) -> list[str]:
    assert said is False
    held = value if isinstance(value, dict) else {}
    return [f"{path}: {name} is not known" for name in held.keys() - schema["properties"].keys()]


def _items(value: Any, said: Any, schema: dict[str, Any], whole: dict[str, Any], path: str) -> list[str]:
    rest = list(enumerate(value))[len(schema.get("prefixItems", ())) :] if isinstance(value, list) else []
    if said is False:
        return [f"{path}: more than there may be"] if rest else []
    return [one for n, entry in rest for one in faults(entry, said, whole, f"{path}[{n}]")]


def _prefix(value: Any, said: list[Any], _: Any, whole: dict[str, Any], path: str) -> list[str]:
    pairs = enumerate(zip(value, said, strict=False)) if isinstance(value, list) else ()
    return [one for n, (entry, shape) in pairs for one in faults(entry, shape, whole, f"{path}[{n}]")]


def _least(value: Any, said: int, _: Any, __: Any, path: str) -> list[str]:
    return [f"{path}: fewer than {said}"] if isinstance(value, list) and len(value) < said else []


def _most(value: Any, said: int, _: Any, __: Any, path: str) -> list[str]:
    return [f"{path}: more than {said}"] if isinstance(value, list) and len(value) > said else []


JUDGES: dict[str, Any] = {
    "$ref": _ref,
    "anyOf": _any_of,
    "type": _type,
    "enum": _enum,
    "minimum": _minimum,
    "required": _required,
    "properties": _properties,
    "additionalProperties": _strangers,
    "items": _items,
    "prefixItems": _prefix,
    "minItems": _least,
    "maxItems": _most,
}
