"""Volumes as they come in, and what they came to together."""

from padspec.collection.records.volumes import withdraw_volumes
from padspec.personal.bench import join_seen
from padspec.personal.faults import MOST_TOLD, RowFault
from padspec.personal.looks import Look
from padspec.personal.volume import Extreme, VolumeMade
from padspec.workspace import FolderWorkspace, content_digest

_PASSING = ".cache/passing"


class Tally:
    """Volumes are written where nobody looks, until it is known whether all rows pass. `folder` is theirs."""

    def __init__(self, folder: str, output: FolderWorkspace) -> None:
        self._folder, self._output = folder, output
        self._passing = f"{_PASSING}/{content_digest(folder.encode())[:16]}"
        self.clear()
        self._files: dict[str, str] = {}
        self.volumes = self.errors = 0
        self.faults: list[RowFault] = []
        self.extremes: dict[tuple[str, str, tuple[str, ...]], Extreme] = {}
        self.looks: dict[tuple[str, ...], Look] = {}
        self.seen: dict[str, str] = {}
        self.families: set[str] = set()

    def clear(self) -> None:
        """Take away what lies where nobody looks: also of a run that was stopped in the middle."""
        for path in self._output.neighbours(self._passing, ""):
            self._output.remove(path)

    def take(self, volume: VolumeMade) -> None:
        """Keep what one volume came to, and let its bytes go; ProblemsError where a file changed meanwhile."""
        self.volumes += 1
        self.errors += volume.errors
        self.faults = in_order((*self.faults, *volume.faults))
        join_seen(self.seen, volume.seen)
        self.families.update(volume.families)
        for extreme in volume.extremes:
            where = extreme.way, extreme.block, extreme.key
            best = self.extremes.get(where)
            # Volumes come as they are done: of equals, the first row of the table counts.
            if best is None or (-extreme.measure, extreme.row.number) < (-best.measure, best.row.number):
                self.extremes[where] = extreme
        for look in volume.looks:
            known = self.looks.get(look.key)
            if known is None or look.row < known.row:
                self.looks[look.key] = look
        if volume.pdf:
            stem = f"volume-{volume.number:03}"
            self._keep(f"{stem}.pdf", volume.pdf)
            self._keep(f"{stem}.csv", volume.contents.encode("utf-8-sig"))

    def _keep(self, name: str, data: bytes) -> None:
        self._output.write(f"{self._passing}/{name}", data)
        self._files[name] = content_digest(data)

    def settle(self, kept: bool) -> dict[str, str]:
        """Put all in place, or take all away; what stands in place afterwards, with digests.

        Volumes of an earlier run are set aside or taken away: nothing stale looks fresh.
        """
        mine = self._files if kept else {}
        withdraw_volumes(self._folder, self._output, frozenset(mine))
        for name in mine:
            self._output.set_aside(f"{self._passing}/{name}", f"{self._folder}/{name}")
        self.clear()
        return {f"{self._folder}/{name}": digest for name, digest in mine.items()}


def in_order(faults: tuple[RowFault, ...]) -> list[RowFault]:
    """The first faults in the order of their rows, errors before warnings, as many as are told."""
    return sorted(faults, key=lambda fault: (fault.severity != "error", fault.row, fault.message))[:MOST_TOLD]
