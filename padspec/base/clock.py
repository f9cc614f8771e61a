"""The one clock: the day that SOURCE_DATE_EPOCH names, and today where a maker's own records need one.

Nothing that is drawn asks for today, so that the same files give the same bytes on any day.
"""

import os

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place

#: The first second of the year 10000, which a date of ten characters cannot name.
_END_OF_DATES = 253_402_300_800


def source_date() -> str | None:
    """The day of SOURCE_DATE_EPOCH (reproducible-builds.org) as YYYY-MM-DD, None where it is not set.

    Raises ProblemsError where it is set to anything but a number of seconds.
    """
    from datetime import UTC, datetime

    epoch = os.environ.get("SOURCE_DATE_EPOCH", "")
    if not epoch:
        return None
    digits = epoch.isascii() and epoch.isdigit() and len(epoch) <= len(str(_END_OF_DATES))
    if not digits or int(epoch) >= _END_OF_DATES:
        message = f"{epoch[:40]} is not a number of seconds since 1970, from 0 to {_END_OF_DATES - 1}."
        mend = "Set it to one, such as 1735689600 for 2025-01-01, or unset it."
        raise ProblemsError(Problem(Place("SOURCE_DATE_EPOCH", 0, 0), message, mend))
    return datetime.fromtimestamp(int(epoch), UTC).date().isoformat()


def today() -> str:
    """The day of SOURCE_DATE_EPOCH, else the day that the maker's own calendar shows."""
    from datetime import date

    return source_date() or date.today().isoformat()
