"""Documents in, Design out: defaults filled, palette mixed, pictures prepared, fonts found.

Everything that is wrong is collected and raised once as ProblemsError; what is returned is whole.
"""

import re
from collections.abc import Iterator
from functools import partial
from typing import Literal, cast
from unicodedata import normalize

from padspec.art.errors import ArtError
from padspec.base.findings import Severity
from padspec.base.geometry import Size
from padspec.base.nearest import did_you_mean
from padspec.base.numbers import mm_text, round_down
from padspec.base.place import Place
from padspec.reading.defaults import defaults
from padspec.reading.gather import Documents
from padspec.reading.tree import Mapping, Scalar
from padspec.resolve import pictures
from padspec.resolve.blocks.columns import column_shares, shared_widths
from padspec.resolve.blocks.panel import USUAL_PAD
from padspec.resolve.blocks.table import read_blocks
from padspec.resolve.colours import ArtColours, Palette
from padspec.resolve.design import Allowance, Design, Limit
from padspec.resolve.drafts import Draft, bundle_at, draft_blocks, keys_of, opened
from padspec.resolve.ground import read_ground
from padspec.resolve.key import Key
from padspec.resolve.lettering_fonts import FontShelf
from padspec.resolve.means import Means
from padspec.resolve.read_studio import read_studio
from padspec.resolve.repeat import spread
from padspec.resolve.settings import Settings, Troubles, merge
from padspec.resolve.workshop import read_safe_margins, read_sheet, refuse_margins, size_of
from padspec.workspace import Workspace, joined

LEAST_TRIM, MOST_TRIM = 20.0, 1000.0
#: A picture narrower than this is no picture, in mm.
LEAST_ART = 5.0
#: Folders of the output that are not a design's.
_TAKEN = ("art", "catalogue", "jobs")
_FIRST_DAY = "2000-01-01"
#: What the files of built-in layouts are called; a maker cannot mend anything there.
_BUILT_IN = "padspec/layouts/"


def resolve(documents: Documents, workspace: Workspace) -> Design:
    """The design that these documents describe. Raises ProblemsError with every fault found."""
    troubles = Troubles()
    root, studio = documents.design.root, documents.studio.root
    own = Settings(merge(merge(defaults("design"), _shared(studio)), root), troubles)
    trim = _trim(own)
    safe = read_safe_margins(studio, troubles)
    clear = max(safe.left, safe.top, safe.right, safe.bottom)
    drafts = spread(draft_blocks(documents.layout.root, studio, root, troubles, trim, clear))
    sheet = read_sheet(studio, root, troubles)
    placed, first = _pictures(drafts, trim, sheet.bleed, workspace, troubles)
    _refuse_art_without_file(drafts, root, troubles)
    palette = Palette(
        _palette(studio, root),
        _art_colours(first, _names_picture(drafts)),
        troubles,
        colourway=own.text("colourway"),
    )
    fonts = FontShelf(workspace, troubles)
    face = read_blocks(drafts, Means(trim, palette, fonts, placed, studio.text("studio")))
    files = (documents.design.file, documents.studio.file, documents.layout.file)
    own_files = tuple(file for file in files if not file.startswith(_BUILT_IN))
    entry = root.entry("pad")
    design = Design(
        name=own.text("pad"),
        sku=_sku(own, documents.design.file),
        file=documents.design.file,
        place=entry.key_place if entry else root.place,
        trim=trim,
        leaves=own.integer("leaves"),
        date=workspace.date() or (own.text("date") if own.has("date") else _FIRST_DAY),
        layout=documents.layout.root.text("layout"),
        palette=palette.all(),
        ground=read_ground(own.section("ground"), palette, trim, lambda s: _art_bytes(s, workspace, troubles)),
        face=face,
        sheet=sheet,
        studio=read_studio(studio, workspace, troubles),
        safe=safe,
        small_print=fonts.plain(),
        limits=_limits(bundle_at(studio, "limits")) + _limits(bundle_at(root, "limits")),
        allowances=_allowances(bundle_at(root, "allow")),
        keys=keys_of(drafts, root, own_files) + _sheet_keys(own, root, studio) + _ground_keys(root),
    )
    palette.refuse_misspelt(bundle_at(root, "palette"))
    refuse_margins(design.studio, design.sheet, studio, troubles)
    troubles.raise_if_any()
    return design


def _sheet_keys(own: Settings, design: Mapping, studio: Mapping) -> tuple[Key, ...]:
    """Where the settings of the sheet and of the trim stand."""
    start = design.entry("pad")
    found = [Key("sheet", "trim", own.place("trim"), ("trim",))]
    for name in ("size", "n-up", "gutter", "bleed", "least-bleed", "marks", "sheet"):
        place = start.key_place if start else design.place
        for source in (studio, design):
            entry = source.entry("sheet")
            if entry is not None and isinstance(entry.value, Mapping):
                inner = entry.value.entry(name)
                place = inner.value.place if inner else entry.key_place
        found.append(Key("sheet", name, place, ("sheet", name)))
    return tuple(found)


def _ground_keys(design: Mapping) -> tuple[Key, ...]:
    """Where the colours of the ground and its pattern stand in the design, the palette's own name followed."""
    ground, palette = bundle_at(design, "ground"), bundle_at(design, "palette")
    found = []
    for name, bundle, path in (
        ("colour", ground, ("ground", "colour")),
        ("pattern-colour", bundle_at(ground, "pattern"), ("ground", "pattern", "colour")),
    ):
        role = "ground" if name == "colour" else "pattern"
        written = bundle.get("colour")
        word = written.text if isinstance(written, Scalar) else role if written is None else ""
        named = palette.entry(word)
        if named is not None:
            found.append(Key("ground", name, named.value.place, ("palette", word)))
        elif written is not None:
            found.append(Key("ground", name, written.place, path))
        else:
            entry = design.entry("ground") or design.entry("pad")
            found.append(Key("ground", name, entry.key_place if entry else design.place, path))
    return tuple(found)


def _shared(studio: Mapping) -> Mapping:
    """What a studio sets for every design outside the blocks."""
    kept = tuple(entry for entry in studio.entries if entry.key in ("leaves", "ground", "colourway"))
    return Mapping(kept, studio.place)


def _trim(own: Settings) -> Size:
    trim = size_of(own.section("trim"))
    for side, length in (("width", trim.width), ("height", trim.height)):
        if not LEAST_TRIM <= length <= MOST_TRIM:
            own.troubles.add(
                own.section("trim").place(side),
                f"A {side} of {mm_text(length)} is not one that can be cut and bound here.",
                f"Write {LEAST_TRIM:g} mm to {MOST_TRIM:g} mm.",
            )
    return Size(max(trim.width, LEAST_TRIM), max(trim.height, LEAST_TRIM))


def _palette(studio: Mapping, design: Mapping) -> Mapping:
    """The studio's names under the design's; each colour is one value and replaces whole."""
    entries = {entry.key: entry for source in (studio, design) for entry in bundle_at(source, "palette").entries}
    return Mapping(tuple(entries.values()), bundle_at(design, "palette").place)


Mode = Literal["auto", "even", "none"]
_File = tuple[bytes, str, Mode]


def _pictures(
    drafts: tuple[Draft, ...], trim: Size, bleed: float, workspace: Workspace, troubles: Troubles
) -> tuple[dict[str, pictures.PlacedPicture], _File | None]:
    """The prepared picture of each art block that has one, and the first file for the palette."""
    placed: dict[str, pictures.PlacedPicture] = {}
    first: _File | None = None
    for draft, width in _art_rooms(drafts, trim.width):
        if not draft.settings.has("file"):
            continue
        wish = _wish(draft, width, trim, bleed)
        data = _art_bytes(draft.settings, workspace, troubles)
        if data is None:
            continue
        try:
            placed[draft.id] = pictures.prepare(data, wish)
            first = first or (data, wish.file, wish.cutout)
        except ArtError as error:
            troubles.add(draft.settings.place("file"), error.message, error.mend)
    return placed, first


def _refuse_art_without_file(drafts: tuple[Draft, ...], design: Mapping, troubles: Troubles) -> None:
    """Settings for a picture that is never named are a slip, not a wish for no picture."""
    entry = design.entry("art")
    if entry is not None and not any(draft.kind == "art" for draft in opened(drafts)):
        troubles.add(
            entry.key_place,
            "The layout has no place for a picture.",
            "Add a block to it under face: - art: {id: art}, or leave art out here.",
        )
    elif entry is not None and not _names_picture(drafts):
        troubles.add(
            entry.key_place, "The art has settings but no picture.", "Name one: art: {file: art/moth.png, …}."
        )


def _art_rooms(drafts: tuple[Draft, ...], width: float) -> Iterator[tuple[Draft, float]]:
    """Each art block with the width of what holds it: the trim, or a holder less what it takes for itself."""
    for draft in drafts:
        match draft.kind:
            case "art":
                yield draft, width
            case "panel":
                yield from _art_rooms(draft.holds, width - 2 * (draft.inset + draft.scaled("pad", USUAL_PAD)))
            case "stack":
                yield from _art_rooms(draft.holds, width - 2 * draft.inset)
            case "columns":
                gaps = draft.settings.length("gap") * (len(draft.holds) - 1)
                widths = shared_widths(width - 2 * draft.inset - gaps, column_shares(draft))
                for inner, wide in zip(draft.holds, widths, strict=True):
                    yield from _art_rooms((inner,), wide)
            case _:
                pass


def _wish(draft: Draft, width: float, trim: Size, bleed: float) -> pictures.PictureWish:
    settings = draft.settings
    if settings.text("fills") == "face":
        return _whole_face(settings, trim, bleed)
    room = width - 2 * draft.inset
    if room < LEAST_ART:
        message = f"Insets of {mm_text(draft.inset)} leave {mm_text(max(room, 0))} for a picture."
        most = mm_text(max(round_down((width - LEAST_ART) / 2, 0.5), 0.0))
        settings.troubles.add(settings.place("inset"), message, f"Write {most} or less.")
    room = max(room, LEAST_ART)
    return pictures.PictureWish(
        file=settings.text("file"),
        most_width=min(settings.length_or_share("width", room), room),
        most_height=settings.length_or_share("height", trim.height),
        cutout=cast(Mode, settings.text("cutout")),
        trim_empty=settings.flag("trim-empty"),
        keep_vector=settings.flag("keep-vector"),
        frame=None if settings.text("frame") == "auto" else settings.length("frame"),
    )


def _whole_face(settings: Settings, trim: Size, bleed: float) -> pictures.PictureWish:
    """A picture under everything, out to the bleed: whole, without a frame."""
    return pictures.PictureWish(
        file=settings.text("file"),
        most_width=trim.width + 2 * bleed,
        most_height=trim.height + 2 * bleed,
        cutout="none",
        trim_empty=False,
        keep_vector=settings.flag("keep-vector"),
        frame=0.0,
        covers=True,
    )


def _art_bytes(settings: Settings, workspace: Workspace, troubles: Troubles) -> bytes | None:
    place, name = settings.place("file"), settings.text("file")
    try:
        path = joined(place.file, name)
    except ValueError:
        troubles.add(place, f"{name} leads outside the project folder.", "Copy the picture into art/.")
        return None
    if workspace.is_file(path):
        return workspace.read(path)
    folder = path.rpartition("/")[0] or "."
    troubles.add(place, f"There is no picture {path}.", _likely_picture(name, folder, workspace, place))
    return None


def _likely_picture(name: str, folder: str, workspace: Workspace, place: Place) -> str:
    near = [path.rpartition("/")[2] for path in workspace.neighbours(folder, "")]
    base = name.rpartition("/")[2]
    hint = did_you_mean(base, near) if near else ""
    return hint if hint.startswith("Did") else f"Paths start at the folder of {place.file}."


def _names_picture(drafts: tuple[Draft, ...]) -> bool:
    return any(draft.kind == "art" and draft.settings.has("file") for draft in opened(drafts))


def _art_colours(first: _File | None, named: bool) -> ArtColours:
    if first is None:
        return ArtColours(tuple, lambda: None, has_art=named)
    return ArtColours(partial(pictures.colours, *first), partial(pictures.leading_hue, *first), has_art=True)


def _limits(bundle: Mapping) -> tuple[Limit, ...]:
    found: list[Limit] = []
    for entry in bundle.entries:
        match entry.value:
            case Scalar(text, place):
                found.append(Limit(entry.key, None, text, place))
            case Mapping(entries):
                found += [
                    Limit(entry.key, Severity[level.key.upper()], level.value.text, level.value.place)
                    for level in entries
                    if isinstance(level.value, Scalar)
                ]
            case _:
                pass
    return tuple(found)


def _allowances(bundle: Mapping) -> tuple[Allowance, ...]:
    return tuple(
        Allowance(entry.key, entry.value.text, entry.key_place)
        for entry in bundle.entries
        if isinstance(entry.value, Scalar)
    )


def _sku(own: Settings, file: str) -> str:
    """The design's own, else the stem of its file as far as it can name a folder."""
    sku = own.text("sku") if own.has("sku") else re.sub(r"[^\w-]+", "-", normalize("NFC", _stem(file))).strip("-")
    if sku.casefold() in ("", *_TAKEN):
        why = "is the name of a folder that padspec writes" if sku else "leaves nothing to name a folder by"
        own.troubles.add(own.place("sku"), f"The SKU {sku or _stem(file)} {why}.", "Write one: sku: NG-MOTH.")
    return sku


def _stem(file: str) -> str:
    return file.rpartition("/")[2].removesuffix(".yaml").removesuffix(".yml").removesuffix(".pad")
