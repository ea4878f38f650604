"""What a JSON Schema says of the sorts of values: for holding two descriptions of one thing."""

from functools import partial
from typing import Any


def plain(schema: Any, defs: dict[str, Any], null_is_left_out: bool = False) -> Any:
    """The sorts of values, and no more: references looked up, pairs as lists of what both are.

    null_is_left_out: what may be null by default may, in the other description, not be there.
    """
    again = partial(plain, defs=defs, null_is_left_out=null_is_left_out)
    if isinstance(schema, list):
        return sorted(map(again, schema), key=repr)
    if not isinstance(schema, dict):
        return schema
    if "$ref" in schema:
        return again(defs[schema["$ref"].rpartition("/")[2]])
    if null_is_left_out and schema.get("default", 0) is None:
        return again(next(one for one in schema["anyOf"] if one != {"type": "null"}))
    if "prefixItems" in schema:
        one, other = map(again, schema["prefixItems"])
        return {"type": "array", "items": one} if one == other else {"type": "array"}
    if "properties" in schema:
        return {name: again(one) for name, one in schema["properties"].items()}
    sorts = ("type", "enum", "anyOf", "items", "additionalProperties")
    return {name: again(schema[name]) for name in sorts if name in schema}
