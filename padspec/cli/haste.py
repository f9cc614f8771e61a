"""The process set up for a short run of two threads, as a command may and a library may not."""

import gc
import os
import sys


def make_haste() -> None:
    """Fit the process to building; nothing that is written depends on it. To be called before numpy is loaded."""
    # Loading makes a hundred thousand objects that all stay: looking for garbage among them finds none.
    gc.set_threshold(100_000)
    # The thread that decodes wants Python back for a moment at every block of its file.
    sys.setswitchinterval(0.0005)
    # No matrix here is large: threads for matrices would only take the cores from the picture.
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
