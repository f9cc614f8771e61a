"""Where a value fits none of a schema's alternatives: which of them the maker meant."""

from typing import Any

from padspec.base.nearest import nearest


def fitting(error: Any) -> tuple[Any, ...]:
    """The errors of the alternative that comes nearest to what was written.

    Empty where the value has the form of none of them (a list where a text or a mapping belongs, a word where
    none or a length belongs). A word near one of an alternative's choices counts as that choice misspelt; a
    mapping belongs to the alternative that leaves the fewest of its keys unknown.
    """
    branches: dict[int, list[Any]] = {}
    for inner in error.context:
        branches.setdefault(inner.relative_schema_path[0], []).append(inner)
    formed = [errors for errors in branches.values() if not any(map(_is_of_other_form, errors))]
    if isinstance(error.instance, str):
        return _for_a_word(error.instance, formed)
    nearest_branch: list[Any] = min(formed, key=_distance) if formed else []
    return tuple(nearest_branch)


def _is_of_other_form(inner: Any) -> bool:
    return inner.validator == "type" and not inner.relative_path


def _for_a_word(word: str, formed: list[list[Any]]) -> tuple[Any, ...]:
    choices = [errors for errors in formed if errors[0].validator == "enum"]
    for errors in choices:
        if nearest(word[:60], errors[0].validator_value):
            return tuple(errors)
    others = tuple(next((errors for errors in formed if errors not in choices), ()))
    tries_others = not choices or any(character.isnumeric() for character in word)
    return others if tries_others else ()


def _distance(errors: list[Any]) -> tuple[int, int, int]:
    """Unknown keys first, then those that are near no known one, then all other errors."""
    unknown = [(key, inner) for inner in errors if _is_unknown(inner) for key in _strangers(inner)]
    unlike = sum(1 for key, inner in unknown if not nearest(key[:60], inner.schema["properties"]))
    return len(unknown), unlike, len(errors)


def _is_unknown(inner: Any) -> bool:
    return inner.validator == "additionalProperties" and not inner.relative_path


def _strangers(inner: Any) -> list[str]:
    return [key for key in inner.instance if key not in inner.schema.get("properties", {})]
