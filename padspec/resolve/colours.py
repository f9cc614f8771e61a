"""Colours as written (hex, name, a palette name, taken from the art, lightened) to colours that print."""

from collections.abc import Callable
from difflib import get_close_matches
from functools import cached_property

from PIL.ImageColor import colormap

from padspec.art.palette import Cluster
from padspec.base.colour import WHITE, Colour
from padspec.base.contrast import delta_e
from padspec.base.mixing import darken, lighten
from padspec.base.nearest import did_you_mean
from padspec.base.place import Place
from padspec.reading.tree import Mapping, Node, Scalar
from padspec.resolve import roles
from padspec.resolve.role_names import ON_GROUND_NAMES, ROLE_NAMES
from padspec.resolve.roles import NATURAL, recipe_named
from padspec.resolve.settings import Settings, Troubles

#: A palette name this like a role's (of 1) and used by nothing is taken for a slip.
_SLIP = 0.85
_LONGEST_CHAIN = 64


class ArtColours:
    """What the palette may ask of the picture, worked out only when it is asked."""

    def __init__(
        self, clusters: Callable[[], tuple[Cluster, ...]], hue: Callable[[], float | None], has_art: bool
    ) -> None:
        self._clusters = clusters
        self._hue = hue
        self.has_art = has_art

    @cached_property
    def clusters(self) -> tuple[Cluster, ...]:
        """The picture's colours by visible area."""
        return self._clusters()

    @cached_property
    def hue(self) -> float | None:
        """The leading hue, None for a neutral picture or none at all."""
        return self._hue()


class Palette:
    """Names for colours. A name is looked up once; a chain that leads back to itself is refused.

    Roles that the maker leaves open are those of a ready colourway; KeyError for one that is not in
    `roles.COLOURWAYS`.
    """

    def __init__(
        self, bundle: Mapping, art: ArtColours, troubles: Troubles, *, colourway: str = NATURAL.name
    ) -> None:
        self._recipe = recipe_named(colourway)
        self._bundle = bundle
        self._art = art
        self._troubles = troubles
        self._known: dict[str, Colour] = {}
        self._open: list[str] = []
        self._used: set[str] = set()

    @property
    def names(self) -> tuple[str, ...]:
        """Every name that may be used: the maker's own, the roles and what follows from them."""
        return tuple(dict.fromkeys((*self._bundle.keys, *ROLE_NAMES, *ON_GROUND_NAMES)))

    def all(self) -> tuple[tuple[str, Colour], ...]:
        """Every name with its colour, roles first."""
        names = dict.fromkeys((*ROLE_NAMES, *self._bundle.keys))
        return tuple((name, self._named(name, self._bundle.place)) for name in names)

    def refuse_misspelt(self, own: Mapping) -> None:
        """A name of the design's own that nothing uses and that is a letter off a role is a slip of the pen: the
        role kept its default. A studio's palette may hold names for other designs.
        """
        for entry in own.entries:
            likely = get_close_matches(entry.key, ROLE_NAMES, n=1, cutoff=_SLIP)
            if entry.key in self._used or entry.key in ROLE_NAMES or not likely or likely[0] in self._bundle.keys:
                continue
            message = f"Nothing uses the palette name {entry.key}, and {likely[0]} is not set."
            self._troubles.add(entry.key_place, message, f"Did you mean {likely[0]}?")

    def colour(self, settings: Settings, key: str) -> Colour:
        """The colour of a setting, with a `lighten` or `darken` that stands beside it."""
        found = self._of(settings.node(key))
        return self._adjusted(found, settings)

    def _of(self, node: Node) -> Colour:
        if isinstance(node, Scalar):
            return self._word(node.text, node.place)
        if isinstance(node, Mapping):
            return self._bundled(Settings(node, self._troubles))
        return WHITE

    def _word(self, text: str, place: Place) -> Colour:
        self._used.add(text)
        if text.startswith("#"):
            return Colour.from_hex(text)
        if text in self.names:
            return self._named(text, place)
        if text.lower() in colormap:
            value = colormap[text.lower()]
            return Colour.from_hex(value) if isinstance(value, str) else Colour(*value[:3])
        mend = did_you_mean(text, (*self.names, *colormap)) if text else 'Write a colour such as "#7a3b58".'
        self._troubles.add(place, f"{text} is neither a palette name nor a CSS colour.", mend)
        return WHITE

    def _bundled(self, settings: Settings) -> Colour:
        source = settings.text("from")
        if source == "art":
            return self._adjusted(self._from_art(settings), settings)
        return self._adjusted(self._word(source, settings.place("from")), settings)

    def _from_art(self, settings: Settings) -> Colour:
        if not self._art.has_art:
            message = "This colour is taken from the art, and the design has none."
            self._troubles.add(
                settings.place("from"), message, "Name a picture under art: {file: …}, or write a colour."
            )
            return WHITE
        clusters = self._art.clusters
        if not clusters:  # a picture that cannot be read has been told of already
            return WHITE
        if settings.has("near"):
            wish = self._of(settings.node("near"))
            return min(clusters, key=lambda c: (round(delta_e(wish, c.colour), 9), c.colour)).colour
        rank = settings.integer("rank") if settings.has("rank") else 1
        if rank > len(clusters):
            self._troubles.add(
                settings.place("rank"),
                f"The picture has {len(clusters)} colours that can be told apart; rank {rank} asks for one more.",
                f"Write a rank from 1 to {len(clusters)}; padspec palette shows them.",
            )
            rank = len(clusters)
        return clusters[rank - 1].colour

    def _adjusted(self, colour: Colour, settings: Settings) -> Colour:
        if settings.has("lighten"):
            return lighten(colour, settings.share("lighten"))
        if settings.has("darken"):
            return darken(colour, settings.share("darken"))
        return colour

    def _named(self, name: str, place: Place) -> Colour:
        if name in self._known:
            return self._known[name]
        if name in self._open:
            chain = " → ".join((*self._open[self._open.index(name) :], name))
            message = f"These palette names lead in a circle: {chain}."
            self._troubles.add(place, message, "Give one of them a colour of its own.")
            return WHITE
        if len(self._open) >= _LONGEST_CHAIN:
            message = f"More than {_LONGEST_CHAIN} palette names lead from one to the next."
            self._troubles.add(place, message, "Give one of them a colour of its own.")
            return WHITE
        self._open.append(name)
        entry = self._bundle.entry(name)
        self._known[name] = self._of(entry.value) if entry is not None else self._role(name, place)
        self._open.pop()
        return self._known[name]

    def _role(self, name: str, place: Place) -> Colour:
        hue, recipe = self._art.hue, self._recipe

        def named(other: str) -> Colour:
            return self._named(other, place)

        match name:
            case "ground":
                return roles.ground(hue, recipe)
            case "pattern":
                return roles.pattern(hue, recipe)
            case "rule":
                return roles.rule(hue, named("paper"), recipe)
            case "lettering":
                return roles.lettering(hue, named("paper"), named("ground"), recipe)
            case "rule-on-ground":
                return roles.rule_on_ground(hue, (named("ground"), named("pattern")), named("rule"), recipe)
            case "lettering-on-ground":
                under = (named("ground"), named("pattern"))
                return roles.lettering_on_ground(hue, under, named("lettering"), recipe)
            case _:
                return roles.paper(hue, recipe)
