"""Decode the picture that a design seems to name, beside all else that has to be loaded first."""

from contextlib import suppress

from padspec.base.errors import ProblemsError
from padspec.collection.targets import Target
from padspec.workspace import FolderWorkspace, joined


def decode_ahead(target: Target) -> None:
    """Decode a design's picture, if it has one that can be read.

    Decoding lets go of Python. Only time hangs on the guess: whoever finds nothing decoded decodes it then, and
    what is wrong with a file is said then too.
    """
    from padspec.art.errors import ArtError
    from padspec.art.raster.once import decoded
    from padspec.reading.parsing.yaml_reader import decode, parse_leniently
    from padspec.reading.tree import Mapping, Scalar

    workspace = FolderWorkspace(target.root)
    with suppress(ProblemsError, ArtError, ValueError):
        root, _ = parse_leniently(decode(workspace.read(target.path), target.path), target.path)
        art = root.get("art") if root else None
        name = art.get("file") if isinstance(art, Mapping) else None
        if isinstance(name, Scalar):
            decoded(workspace.read(joined(target.path, name.text)), name.text, keep=True)
