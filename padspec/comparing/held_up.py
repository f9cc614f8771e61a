"""One pad held up against what it was: facts to changes, faces to pictures."""

from padspec.base.numbers import EPSILON
from padspec.collection.variants import Member
from padspec.comparing.changes import Made, changes
from padspec.comparing.comparison import Compared, Shown, State
from padspec.comparing.facts import facts
from padspec.comparing.picture import Pixels, only_face, panels
from padspec.draw.png import png_file
from padspec.pipeline import Pad, make
from padspec.scene.nodes import Scene
from padspec.workspace import Workspace

BEFORE, NOW, DIFFERENCE = "before", "now", "difference"


def made_side(member: Member, workspace: Workspace) -> Made:
    """A pad of one side with its facts; raises ProblemsError."""
    pad = make(member.path, workspace, variation=member.variation)
    return Made(pad, facts(pad, workspace.seen))


def one_sided(pad: Pad, state: State, drawn: bool) -> Compared:
    """A pad that can be shown on one side only."""
    design = pad.design
    shown = _one(pad.face.scene, BEFORE if state == "removed" else NOW) if drawn else None
    listing = design.listing
    return Compared(design.sku, design.name, design.file, state, listing.own_sku, listing.values, shown=shown)


def two_sided(before: Made, now: Made, drawn: bool) -> Compared:
    """A pad before and now."""
    design = now.pad.design
    found = changes(before, now)
    old, new = before.pad.face.scene, now.pad.face.scene
    same_face = old == new
    return Compared(
        sku=design.sku,
        name=design.name,
        file=design.file,
        state="changed" if found else "same",
        own_sku=design.listing.own_sku,
        values=design.listing.values,
        changes=found,
        shown=_two(old, new) if drawn and found and not same_face else None,
        same_face=same_face,
    )


def _one(scene: Scene, name: str) -> Shown:
    pixels, width, height = only_face(scene)
    return Shown({name: _png(pixels)}, width, height, 1.0, ())


def _two(before: Scene, now: Scene) -> Shown:
    found = panels(before, now)
    files = {BEFORE: found.before, NOW: found.now, DIFFERENCE: found.difference}
    share = 0.0 if found.share < EPSILON else found.share
    made = {name: _png(pixels) for name, pixels in files.items()}
    return Shown(made, found.width, found.height, share, found.places)


def _png(pixels: Pixels) -> bytes:
    """A PNG; without its fourth channel where nothing of it is clear."""
    return png_file(pixels[..., :3].copy() if (pixels[..., 3] == 255).all() else pixels)
