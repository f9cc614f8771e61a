"""The workshop without a design: studio.yaml in, its sheet and all that is true of it out."""

from dataclasses import dataclass

from padspec.base.place import Place
from padspec.reading.document import read
from padspec.reading.gather import STUDIO_FILE, read_file
from padspec.reading.tree import Mapping
from padspec.resolve.design import SheetWish
from padspec.resolve.read_studio import read_studio
from padspec.resolve.settings import Troubles
from padspec.resolve.studio import Studio
from padspec.resolve.workshop import read_sheet, refuse_margins
from padspec.workspace import Workspace


@dataclass(frozen=True, slots=True)
class Workshop:
    """The studio, the sheet that its designs have where they do not say otherwise, and the file both stand in."""

    studio: Studio
    wish: SheetWish
    file: str


def read_workshop(workspace: Workspace) -> Workshop:
    """The studio at the root of a project; without a studio.yaml its defaults. Raises ProblemsError."""
    there = workspace.is_file(STUDIO_FILE)
    document = read_file(STUDIO_FILE, "studio", workspace) if there else read("{}\n", STUDIO_FILE, "studio")
    troubles = Troubles()
    wish = read_sheet(document.root, Mapping((), Place(STUDIO_FILE, 0, 0)), troubles)
    studio = read_studio(document.root, workspace, troubles)
    refuse_margins(studio, wish, document.root, troubles)
    troubles.raise_if_any()
    return Workshop(studio, wish, STUDIO_FILE)
