"""A process that enters sales one by one, and says each number only once it is entered."""

import sys
from pathlib import Path

from padspec.stock.append import enter
from padspec.stock.events import Event
from padspec.workspace import FolderWorkspace

if __name__ == "__main__":
    folder, name, count = Path(sys.argv[1]), sys.argv[2], int(sys.argv[3])
    for number in range(count):
        pair = [Event("2026-06-06", "made", f"{name}-{half}", number + 1, None, f"{number}") for half in "ab"]
        enter(pair, FolderWorkspace(folder), "CAD")
        print(number, flush=True)
