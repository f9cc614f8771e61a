"""The one exception of this stage: a picture that cannot be used, and how to mend it."""

from padspec.base.errors import PadspecError


class ArtError(PadspecError):
    """A picture cannot be read or used. `message` says what is wrong, `mend` what to do about it."""

    def __init__(self, message: str, mend: str) -> None:
        super().__init__(f"{message} {mend}")
        self.message = message
        self.mend = mend
