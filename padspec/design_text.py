"""A design as YAML that a maker likes to read: keys in the order of the job, each with a short comment."""

import json
import re

#: Values of a design by path of keys, as a reader takes them: `#f4ecde`, without quotes.
Values = dict[tuple[str, ...], str]

HEAD = "# A list pad. After a change: padspec build (and padspec explain KEY for any key)."
#: The order of the keys, with the comment that stands behind each (or above a bundle).
COMMENTS: Values = {
    ("pad",): "",
    ("sku",): "",
    ("trim",): "the finished leaf, after cutting",
    ("trim", "width"): "",
    ("trim", "height"): "",
    ("leaves",): "leaves in one pad",
    ("layout",): "padspec explain lists them; your own go in layouts/",
    ("art",): "the picture at the head",
    ("art", "file"): "",
    ("art", "height"): "the most it may take; it keeps its own proportions",
    ("art", "overlap"): "how far it lies over the panel",
    ("art", "cutout"): "none keeps the background, auto takes an even one away",
    ("art", "inset"): "from the edges of the leaf",
    ("colourway",): "colours made from the picture",
    ("palette",): "taken from the picture; change any of them",
    ("palette", "paper"): "what is written on",
    ("palette", "ground"): "the background of the leaf",
    ("palette", "pattern"): "what is drawn on the background",
    ("palette", "rule"): "lines and squares",
    ("palette", "lettering"): "the heading",
    ("ground",): "",
    ("ground", "pattern"): "padspec explain ground.pattern.kind lists them",
    ("ground", "pattern", "kind"): "",
    ("ground", "pattern", "size"): "from one to the next",
    ("heading",): "",
    ("heading", "text"): "",
    ("heading", "font"): "or a file of your own, such as fonts/mine.ttf",
    ("heading", "size"): "shrinks where the words are long",
    ("rows",): "",
    ("rows", "pitch"): "from rule to rule",
    ("rows", "checkbox"): "none leaves the squares out",
    ("rows", "weight"): "how heavy the lines are",
}
_PLAIN = re.compile(r"[A-Za-z0-9][A-Za-z0-9 ./%()'×_-]*")
#: Control characters, other line ends and signs without a shape, which a reader of YAML refuses unescaped.
_HIDDEN = re.compile("[\x7f-\x9f\u2028\u2029\ud800-\udfff\ufeff\ufffe\uffff]")
_COLUMN = 34


def write_design(values: Values) -> str:
    """The YAML of some values; bundles are opened by their comment and a blank line."""
    return "".join(f"{line}\n" for _, line in _lines(values))


def key_at(values: Values, line: int) -> tuple[str, ...]:
    """The path of the key that `write_design` puts on a line, the first being 1; () where it holds none."""
    keys = [path for path, _ in _lines(values)]
    return keys[line - 1] if 1 <= line <= len(keys) else ()


def _lines(values: Values) -> list[tuple[tuple[str, ...], str]]:
    """Every line with the path of its key."""
    lines: list[tuple[tuple[str, ...], str]] = [((), HEAD)]
    for path in _ordered(values):
        key = "  " * (len(path) - 1) + _scalar(path[-1])
        if path in values:
            lines.append((path, _with_comment(f"{key}: {_scalar(values[path])}", COMMENTS.get(path, ""))))
        else:
            if len(path) == 1:
                lines.append(((), ""))
            lines.append((path, _with_comment(f"{key}:", COMMENTS.get(path, ""))))
    return lines


def _ordered(values: Values) -> list[tuple[str, ...]]:
    """Every path with the bundles that hold it, known keys in the order of COMMENTS, others behind their kin."""
    every = {path[:depth] for path in values for depth in range(1, len(path) + 1)}
    order = {path: n for n, path in enumerate(COMMENTS)}

    def rank(path: tuple[str, ...]) -> list[tuple[int, str]]:
        return [(order.get(path[:depth], len(order)), path[depth - 1]) for depth in range(1, len(path) + 1)]

    return sorted(every, key=rank)


def _with_comment(line: str, comment: str) -> str:
    # YAML wants white space before a comment however long the line is.
    return f"{line:<{_COLUMN - 1}} # {comment}" if comment else line


def _scalar(text: str) -> str:
    """Plain where YAML and a reader would both take it for what it is, else quoted."""
    if _PLAIN.fullmatch(text) and not text.endswith(" "):
        return text
    # What JSON escapes YAML reads alike; what else no maker's file may hold as it is follows in YAML's own way.
    return _HIDDEN.sub(_escaped, json.dumps(text, ensure_ascii=False))


def _escaped(found: re.Match[str]) -> str:
    return f"\\U{ord(found.group()):08X}"
