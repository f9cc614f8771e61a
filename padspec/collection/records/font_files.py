"""What the installed packages hold for some families of fonts."""

from padspec.fonts import family_file
from padspec.workspace import content_digest


def font_digests(families: tuple[str, ...]) -> dict[str, str]:
    """The digests of these families' files now; an empty one for a family that has gone."""
    found = {family: family_file(family) for family in families}
    return {family: content_digest(data) if data is not None else "" for family, data in found.items()}
