"""What the installed packages hold for some families of fonts."""

from padspec.fonts import family_file
from padspec.workspace import content_digest


def font_digests(families: tuple[str, ...]) -> dict[str, str]:
    """The digests of these families' files now; an empty one for a family that has gone."""
    return {family: font_digest(family) for family in families}


def font_digest(family: str) -> str:
    """The digest of one family's file now; empty where it has gone."""
    data = family_file(family)
    return content_digest(data) if data is not None else ""
