"""A ticket in, its files out: the page and the data, beside the pages of the job."""

import json

import numpy as np

from padspec.base.geometry import bounded_ppi
from padspec.compose.compose import compose
from padspec.draw.pdf import face_pdf
from padspec.draw.png import png_file, rasterise
from padspec.jobs.pages import folder_of
from padspec.resolve.design import Design
from padspec.ticket.as_data import ticket_data
from padspec.ticket.page import page_html
from padspec.ticket.ticket import Ticket

PAGE, DATA = "ticket.html", "ticket.json"
#: Pixels of the longer side of a face on the ticket: sharp at the size it has there, light to keep.
_LONGER_SIDE = 420


def ticket_files(ticket: Ticket) -> dict[str, bytes]:
    """The page and the data, by path under the output folder."""
    folder = folder_of(ticket.found.batch.plan.name)
    faces = [_face(lot.design) for lot in ticket.found.batch.lots]
    data = json.dumps(ticket_data(ticket), ensure_ascii=False, indent=2)
    return {
        f"{folder}/{PAGE}": page_html(ticket, faces).encode("utf-8"),
        f"{folder}/{DATA}": f"{data}\n".encode(),
    }


def _face(design: Design) -> bytes:
    """The face as it is cut, as a PNG file."""
    scene = compose(design).scene
    ppi = bounded_ppi(scene.bleed_box.size, _LONGER_SIDE / max(design.trim.width, design.trim.height) * 25.4)
    pixels = rasterise(face_pdf(scene, packed=False), ppi)
    edge = round(scene.bleed * ppi / 25.4)
    inside = pixels[edge : len(pixels) - edge, edge : pixels.shape[1] - edge]
    return png_file(np.ascontiguousarray(inside), ppi)
