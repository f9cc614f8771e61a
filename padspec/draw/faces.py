"""The faces of one PDF as forms: each is drawn once and placed as often as it is wanted."""

from collections.abc import Iterable, Iterator, Sequence
from decimal import Decimal

from pikepdf import Array, Dictionary, Name, Object, Pdf, Stream

from padspec.base.numbers import number_text
from padspec.draw.deflate import deflated
from padspec.draw.inking import SCREEN, Inking, opacity_states
from padspec.draw.operators import layer_operators, opening_operator
from padspec.draw.pictures import PictureObjects
from padspec.scene.nodes import Layer, Scene

_STATES = "/ExtGState"


class FaceForms:
    """Makes forms of scenes, in millimetres with y downwards, each clipped to its bleed (ISO 32000-1, 8.10).

    `shared` are layers that many of the scenes hold: each becomes a form of its own that the faces place.
    `packed` says whether the pictures are deflated, `inking` how colours are written.
    """

    __slots__ = ("_inking", "_pdf", "_pictures", "_shared", "_shared_forms")

    def __init__(
        self, pdf: Pdf, shared: Sequence[Layer] = (), packed: bool = True, inking: Inking = SCREEN
    ) -> None:
        self._pdf = pdf
        self._inking = inking
        self._pictures = PictureObjects(pdf, packed, inking)
        self._shared = tuple(shared)
        self._shared_forms: dict[int, Object] = {}

    def form(self, scene: Scene) -> Object:
        """A new form of a scene; pictures and shared layers are those of the forms before."""
        resources = self._pictures.by_name(scene)
        for place, layer in enumerate(self._shared):
            if layer in scene.layers:
                resources[_layer_name(place)] = self._shared_form(place, scene)
        return self._drawn(scene, self._operators(scene), resources)

    def marks(self, scene: Scene) -> tuple[list[str], dict[str, Object]]:
        """Operators for a page itself and the pictures they name."""
        return [*self._operators(scene)], self._pictures.by_name(scene)

    def _operators(self, scene: Scene) -> Iterator[str]:
        yield opening_operator()
        for layer in scene.layers:
            if layer in self._shared:
                yield f"{_layer_name(self._shared.index(layer))} Do"
            else:
                yield from layer_operators(layer, self._inking)

    def _shared_form(self, place: int, scene: Scene) -> Object:
        if place not in self._shared_forms:
            layer = self._shared[place]
            alone = Scene(scene.size, scene.bleed, (layer,))
            operators = [opening_operator(), *layer_operators(layer, self._inking)]
            self._shared_forms[place] = self._drawn(alone, operators, self._pictures.by_name(alone))
        return self._shared_forms[place]

    def _drawn(self, scene: Scene, operators: Iterable[str], resources: dict[str, Object]) -> Object:
        box = scene.bleed_box
        form = content_stream(self._pdf, operators)
        form.Type, form.Subtype = Name.XObject, Name.Form
        form.BBox = number_array(box.x, box.y, box.right, box.bottom)
        form.Resources = resources_of(resources, self._inking, scene)
        return self._pdf.make_indirect(form)


def _layer_name(place: int) -> str:
    return f"/Layer-{place + 1}"


def resources_of(objects: dict[str, Object], inking: Inking, scene: Scene | None = None) -> Dictionary:
    """The resources of a page or form: what it places by name, and what its colours and opacities name."""
    resources = Dictionary(XObject=Dictionary(objects))
    for kind, held in inking.resources().items():
        resources[kind] = held
    states = opacity_states(scene) if scene else {}
    if states:
        resources[_STATES] = Dictionary({**dict(resources.get(_STATES, Dictionary()).items()), **states})
    return resources


def content_stream(pdf: Pdf, operators: Iterable[str]) -> Stream:
    """A deflated stream of operators, one a line."""
    stream = Stream(pdf, b"")
    stream.write(deflated("\n".join(operators).encode("ascii")), filter=Name.FlateDecode)
    return stream


def number_array(*values: float) -> Array:
    """Numbers in plain decimal, to four digits."""
    return Array([Decimal(number_text(value)) for value in values])
