"""The blocks of a layout with their settings laid over each other, before they are typed.

Last wins: padspec's default, the layout, the studio, the design by kind of block, the design by block.
"""

from dataclasses import dataclass
from math import sqrt

from padspec.base.geometry import Size
from padspec.base.nearest import did_you_mean
from padspec.base.place import Place
from padspec.reading.block_keys import block_keys
from padspec.reading.checking.core_schema import integer
from padspec.reading.defaults import block_defaults
from padspec.reading.tree import Mapping, Scalar, Sequence
from padspec.resolve.key import Key
from padspec.resolve.settings import Settings, Troubles, merge

#: How far a panel keeps from the edges on a leaf of the usual size, in mm.
USUAL_INSET = 6.0
_OVERSHOOT = 0.4
#: What lengths with the value `auto` are made for: a leaf so wide, or so high by the second number.
_USUAL_WIDTH, _WIDTH_TO_HEIGHT = 90.0, 0.6
_LEAST_SCALE, _MOST_SCALE = 0.72, 1.5


def scale_for(trim: Size) -> float:
    """How lengths that follow the trim are scaled: by the root of its width, or of the share of its height that
    a slim leaf is wide, so that a leaf four times as large has type twice as large.

    >>> scale_for(Size(90, 190)), round(scale_for(Size(210, 297)), 2), scale_for(Size(60, 60))
    (1.0, 1.41, 0.72)
    """
    measure = min(trim.width, _WIDTH_TO_HEIGHT * trim.height)
    return min(max(sqrt(measure / _USUAL_WIDTH), _LEAST_SCALE), _MOST_SCALE)


@dataclass(frozen=True, slots=True)
class Draft:
    """A block before its settings are typed: its kind, id, merged settings, what it holds, and whether another
    block holds it.

    `called` is its id in the layout, which a design sets it by: blocks that repeat share one and differ in `id`.
    `scale` is that of sizes which follow the trim, `clear` the inset that clears every safe margin.
    """

    kind: str
    id: str
    called: str
    grow: int
    settings: Settings
    holds: "tuple[Draft, ...]"
    held: bool
    scale: float
    clear: float

    @property
    def inset(self) -> float:
        """Its distance from what is around it; inside a panel, whose pad holds it off, none unless written."""
        if self.held and not self.settings.place("inset").line:
            return 0.0
        if self.settings.text("inset") != "auto":
            return self.settings.length("inset")
        # What columns and stacks hold is set in type, whose round letters rise a little past their line.
        overshoot = _OVERSHOOT if self.kind in ("columns", "stack") else 0.0
        return max(self.scaled("inset", USUAL_INSET), self.clear + overshoot)

    def scaled(self, key: str, usual: float) -> float:
        """A length as written; `auto` is the usual one, larger on a large leaf and smaller on a small one."""
        auto = self.settings.text(key) == "auto"
        return round(usual * self.scale, 1) if auto else self.settings.length(key)


@dataclass(frozen=True, slots=True)
class Sources:
    """The maker's bundles that lie over a layout, and where faults go."""

    studio: Mapping
    design: Mapping
    blocks: Mapping
    troubles: Troubles
    scale: float
    clear: float


def draft_blocks(
    layout: Mapping, studio: Mapping, design: Mapping, troubles: Troubles, trim: Size, clear: float
) -> tuple[Draft, ...]:
    """Every block of the layout as a draft; a block that the design sets and the layout lacks is a trouble.

    `clear` is the inset that clears every safe margin.
    """
    sources = Sources(studio, design, bundle_at(design, "blocks"), troubles, scale_for(trim), clear)
    found = _drafts(layout.get("face"), sources, held=False)
    known = [draft.called for draft in opened(found)]
    for entry in sources.blocks.entries:
        if entry.key not in known:
            message = f"The layout has no block {entry.key}."
            troubles.add(entry.key_place, message, did_you_mean(entry.key, known))
    return found


def opened(drafts: tuple[Draft, ...]) -> tuple[Draft, ...]:
    """Every draft, those inside panels included, head to foot."""
    return tuple(inner for draft in drafts for inner in (draft, *opened(draft.holds)))


def bundle_at(source: Mapping, key: str) -> Mapping:
    """The bundle under a key, empty where there is none."""
    node = source.get(key)
    return node if isinstance(node, Mapping) else Mapping((), source.place)


def keys_of(drafts: tuple[Draft, ...], design: Mapping, own_files: tuple[str, ...]) -> tuple[Key, ...]:
    """Where each setting of each block stands, and the path of keys that would set it in the design.

    A setting that the maker wrote nowhere is placed at the nearest thing written: the block's or the kind's
    bundle in the design, else the design's first key.
    """
    every = opened(drafts)
    kinds = [kind for kind, _ in {(draft.kind, draft.called) for draft in every}]
    found = []
    for draft in every:
        by_block = bundle_at(bundle_at(design, "blocks"), draft.called)
        for name in block_keys()[draft.kind]:
            named = _palette_key(draft, name, design)
            if named is not None:
                found.append(named)
                continue
            in_block = by_block.get(name) is not None or kinds.count(draft.kind) > 1
            path = ("blocks", draft.called, name) if in_block else (draft.kind, name)
            text = draft.settings.bundle.text(name)
            found.append(Key(draft.id, name, _place(draft, name, design, own_files), path, text))
    return tuple(found)


def _palette_key(draft: Draft, name: str, design: Mapping) -> Key | None:
    """Where a colour really stands when a setting only names one of the design's own palette."""
    node = draft.settings.bundle.get(name)
    if not isinstance(node, Scalar) or not (name == "colour" or name.endswith("-colour")):
        return None
    entry = bundle_at(design, "palette").entry(node.text)
    return Key(draft.id, name, entry.value.place, ("palette", node.text)) if entry is not None else None


def _place(draft: Draft, name: str, design: Mapping, own_files: tuple[str, ...]) -> Place:
    place = draft.settings.place(name)
    if draft.settings.has(name) and place.file in own_files:
        return place
    entry = bundle_at(design, "blocks").entry(draft.called) or design.entry(draft.kind) or design.entry("pad")
    return entry.key_place if entry is not None else design.place


def _drafts(face: object, sources: Sources, held: bool) -> tuple[Draft, ...]:
    items = face.items if isinstance(face, Sequence) else ()
    return tuple(_draft(item, sources, held) for item in items if isinstance(item, Mapping))


def _draft(item: Mapping, sources: Sources, held: bool) -> Draft:
    kind = item.entries[0].key
    laid = bundle_at(item, kind)
    block_id = laid.text("id")
    own = bundle_at(sources.blocks, block_id)
    _refuse_strangers(kind, block_id, own, sources.troubles)
    settings = block_defaults(kind)
    for layer in (_settings_of(laid), bundle_at(sources.studio, kind), bundle_at(sources.design, kind), own):
        settings = merge(settings, layer)
    holds = _drafts(laid.get("holds"), sources, held=True)
    grow = integer(laid.text("grow")) or 0
    return Draft(
        kind,
        block_id,
        block_id,
        grow,
        Settings(settings, sources.troubles),
        holds,
        held,
        sources.scale,
        sources.clear,
    )


def _settings_of(laid: Mapping) -> Mapping:
    """A layout's block less what is structure rather than setting."""
    kept = tuple(entry for entry in laid.entries if entry.key not in ("id", "grow", "holds"))
    return Mapping(kept, laid.place)


def _refuse_strangers(kind: str, block_id: str, own: Mapping, troubles: Troubles) -> None:
    known = block_keys()[kind]
    for entry in own.entries:
        if entry.key not in known:
            message = f"{block_id} is a block of kind {kind}, which has no {entry.key}."
            troubles.add(entry.key_place, message, did_you_mean(entry.key, known))
