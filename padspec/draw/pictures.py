"""The pictures of one PDF: each distinct one becomes one object, on however many faces it stands."""

from functools import lru_cache
from io import BytesIO
from typing import assert_never

import numpy as np
import pikepdf
from pikepdf import Array, Dictionary, Name, Object, Pdf, Stream

from padspec.base.geometry import Affine, Box
from padspec.draw.deflate import deflated, deflated_rows
from padspec.draw.inking import SCREEN, Inking
from padspec.draw.operators import picture_name
from padspec.scene.nodes import Picture, Raster, Scene, Vector, pictures


class PictureObjects:
    """Makes the object of a picture when it is first asked for, and hands it out again after that.

    Not `packed`, its samples stay as they are: for a file that is only looked at, deflating takes too long.
    """

    __slots__ = ("_inking", "_made", "_packed", "_pdf")

    def __init__(self, pdf: Pdf, packed: bool = True, inking: Inking = SCREEN) -> None:
        self._pdf = pdf
        self._inking = inking
        self._packed = packed
        self._made: dict[str, Object] = {}

    def by_name(self, scene: Scene) -> dict[str, Object]:
        """Every picture of a scene under the name that its operators use, as resources want it."""
        # The largest last: where pixels have to be made of a picture, they must do for each of its boxes.
        drawn = sorted(pictures(scene), key=lambda picture: picture.box.width * picture.box.height)
        named = {picture_name(picture.image): picture for picture in drawn}
        return {f"/{name}": self._object(name, named[name]) for name in sorted(named)}

    def _object(self, name: str, picture: Picture) -> Object:
        if name not in self._made:
            image = self._inking.image(picture)
            match image:
                case Raster():
                    self._made[name] = _raster_object(self._pdf, image, self._inking, self._packed)
                case Vector():
                    self._made[name] = _vector_form(self._pdf, image)
                case _:
                    assert_never(image)
        return self._made[name]


def _raster_object(pdf: Pdf, raster: Raster, inking: Inking, packed: bool) -> Object:
    """An image XObject, with a soft mask if it has transparency (ISO 32000-1, 8.9.5 and 11.6.5.3)."""
    space, channels, data = inking.samples(raster)
    image = _samples(pdf, raster, data, channels, packed)
    image.ColorSpace = space
    if raster.alpha is not None:
        mask = _samples(pdf, raster, raster.alpha, 1, packed)
        mask.ColorSpace = Name.DeviceGray
        image.SMask = pdf.make_indirect(mask)
    return pdf.make_indirect(image)


def _samples(pdf: Pdf, raster: Raster, data: bytes, channels: int, packed: bool) -> Stream:
    stream = Stream(
        pdf,
        b"" if packed else data,
        Type=Name.XObject,
        Subtype=Name.Image,
        Width=raster.width,
        Height=raster.height,
        BitsPerComponent=8,
    )
    if packed:
        parameters = Dictionary(Predictor=15, Colors=channels, BitsPerComponent=8, Columns=raster.width)
        rows = _deflated(data, raster.height, raster.width, channels)
        stream.write(rows, filter=Name.FlateDecode, decode_parms=parameters)
    return stream


# The variants of a design share their picture: within one run each is deflated once.
@lru_cache(maxsize=4)
def _deflated(data: bytes, height: int, width: int, channels: int) -> bytes:
    return deflated_rows(np.frombuffer(data, np.uint8).reshape(height, width, channels))


def _vector_form(pdf: Pdf, vector: Vector) -> Object:
    """The first page of the picture's PDF as a form that fills the unit square, just as an image does."""
    with pikepdf.open(BytesIO(vector.pdf)) as source:
        form = pdf.copy_foreign(source.pages[0].as_form_xobject())
        form.write(deflated(form.read_bytes()), filter=Name.FlateDecode)
    matrix = Affine(*(float(value) for value in form.get("/Matrix", Array([1, 0, 0, 1, 0, 0]))))
    box = _bounds([float(value) for value in form.BBox], matrix)
    unit = Affine(1 / box.width, 0, 0, 1 / box.height, -box.x / box.width, -box.y / box.height)
    m = matrix.then(unit)
    form.Matrix = Array([round(value, 9) for value in (m.a, m.b, m.c, m.d, m.e, m.f)])
    return form


def _bounds(corners: list[float], matrix: Affine) -> Box:
    """The box around a form's BBox after its matrix, in the space that the form is drawn in."""
    left, bottom, right, top = corners
    found = [matrix.of(x, y) for x in (left, right) for y in (bottom, top)]
    xs, ys = [x for x, _ in found], [y for _, y in found]
    return Box(min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys))
