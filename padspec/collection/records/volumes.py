"""The volumes of a personal run in the folder of a pad: where they lie, and how they are set aside.

Personal runs make them; a build that changes the pad's face, or takes the pad away, must not leave them so.
"""

from padspec.workspace import FolderWorkspace

_FINDINGS = "findings.json"


def folder_of(sku: str) -> str:
    """Where the volumes of a pad lie, under the output folder."""
    return f"{sku}/personal"


def withdraw_volumes(folder: str, output: FolderWorkspace, kept: frozenset[str] = frozenset()) -> None:
    """Set aside or take away every volume and list of a folder but those of these names."""
    for path in output.neighbours(folder, ""):
        name = path.rpartition("/")[2]
        if name.startswith("volume-") and name not in kept and not name.endswith(".old.pdf"):
            if name.endswith(".pdf"):
                output.set_aside(path, f"{path.removesuffix('.pdf')}.old.pdf")
            else:
                output.remove(path)


def withdraw_all(sku: str, output: FolderWorkspace) -> None:
    """Let nothing of a pad's run look as if it came from the pad as it is now."""
    withdraw_volumes(folder_of(sku), output)
    output.remove(f"{folder_of(sku)}/{_FINDINGS}")
