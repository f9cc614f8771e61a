"""Documents in, Design out: defaults filled, palette mixed, pictures prepared, fonts found.

Everything that is wrong is collected and raised once as ProblemsError; what is returned is whole.
"""

from padspec.base.findings import Severity
from padspec.reading.defaults import defaults
from padspec.reading.gather import Documents
from padspec.reading.tree import Mapping, Scalar
from padspec.resolve.art_files import (
    art_bytes,
    art_colours,
    names_picture,
    read_pictures,
    refuse_art_without_file,
)
from padspec.resolve.blocks.table import read_blocks
from padspec.resolve.colours import Palette
from padspec.resolve.design import Allowance, Design, Limit
from padspec.resolve.drafts import bundle_at, draft_blocks, keys_of
from padspec.resolve.finish import read_finish
from padspec.resolve.ground import read_ground
from padspec.resolve.key import Key
from padspec.resolve.lettering_fonts import FontShelf
from padspec.resolve.listing import read_listing
from padspec.resolve.means import Means
from padspec.resolve.naming import own_sku, refuse_taken
from padspec.resolve.read_studio import read_studio
from padspec.resolve.repeat import spread
from padspec.resolve.settings import Settings, Troubles, merge
from padspec.resolve.trim import read_trim
from padspec.resolve.workshop import read_safe_margins, read_sheet, refuse_margins
from padspec.workspace import Workspace

_FIRST_DAY = "2000-01-01"
#: What the files of built-in layouts are called; a maker cannot mend anything there.
_BUILT_IN = "padspec/layouts/"


def resolve(documents: Documents, workspace: Workspace) -> Design:
    """The design that these documents describe. Raises ProblemsError with every fault found."""
    troubles = Troubles()
    root, studio = documents.design.root, documents.studio.root
    own = Settings(merge(merge(defaults("design"), _shared(studio)), root), troubles)
    workshop = read_studio(studio, workspace, troubles)
    trim = read_trim(own, workshop)
    safe = read_safe_margins(studio, troubles)
    clear = max(safe.left, safe.top, safe.right, safe.bottom)
    drafts = spread(draft_blocks(documents.layout.root, studio, root, troubles, trim, clear))
    sheet = read_sheet(studio, root, troubles)
    placed, first = read_pictures(drafts, trim, sheet.bleed, workspace, troubles)
    refuse_art_without_file(drafts, root, troubles)
    palette = Palette(
        _palette(studio, root),
        art_colours(first, names_picture(drafts)),
        troubles,
        colourway=own.text("colourway"),
    )
    fonts = FontShelf(workspace, troubles)
    face = read_blocks(drafts, Means(trim, palette, fonts, placed, studio.text("studio")))
    own_files = _own_files(documents)
    entry = root.entry("pad")
    sku = own_sku(own, documents.design.file)
    refuse_taken(documents.variation.sku_of(sku), own)
    design = Design(
        name=documents.variation.name_of(own.text("pad")),
        sku=documents.variation.sku_of(sku),
        file=documents.design.file,
        place=entry.key_place if entry else root.place,
        trim=trim,
        leaves=own.integer("leaves"),
        date=workspace.date() or (own.text("date") if own.has("date") else _FIRST_DAY),
        layout=documents.layout.root.text("layout"),
        palette=palette.all(),
        ground=read_ground(own.section("ground"), palette, trim, lambda s: art_bytes(s, workspace, troubles)),
        face=face,
        sheet=sheet,
        studio=workshop,
        safe=safe,
        small_print=fonts.plain(),
        limits=_limits(bundle_at(studio, "limits")) + _limits(bundle_at(root, "limits")),
        allowances=_allowances(bundle_at(root, "allow")),
        keys=keys_of(drafts, root, own_files) + _sheet_keys(own, root, studio) + _ground_keys(root),
        listing=read_listing(own, sku, documents.variation),
        finish=read_finish(own, trim, workshop),
    )
    palette.refuse_misspelt(bundle_at(root, "palette"))
    refuse_margins(design.studio, design.sheet, studio, troubles)
    troubles.raise_if_any()
    return design


def _own_files(documents: Documents) -> tuple[str, ...]:
    """The files that a maker can mend: not those of built-in layouts."""
    files = (documents.design.file, documents.studio.file, documents.layout.file, documents.variation.file)
    return tuple(file for file in files if file and not file.startswith(_BUILT_IN))


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


def _palette(studio: Mapping, design: Mapping) -> Mapping:
    """The studio's names under the design's; each colour is one value and replaces whole."""
    entries = {entry.key: entry for source in (studio, design) for entry in bundle_at(source, "palette").entries}
    return Mapping(tuple(entries.values()), bundle_at(design, "palette").place)


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
