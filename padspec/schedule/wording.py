"""Minutes and a time line in, words for a person out."""

from padspec.schedule.timeline import Timeline

_BOTTLENECK = {
    "hands": "your hands",
    "printer": "the printer",
    "clamp": "the clamp, filled one load after another",
    "waiting": "the waiting for ink and adhesive to dry",
}


def duration(minutes: float) -> str:
    """A stretch of time, rounded up to whole minutes, so that no promise is short.

    >>> duration(0.2), duration(59.2), duration(125), duration(1440)
    ('1 min', '1 h', '2 h 5 min', '24 h')
    """
    whole = -int(-minutes // 1)
    hours, rest = divmod(whole, 60)
    return " ".join(
        part for part in (f"{hours} h" if hours else "", f"{rest} min" if rest or not hours else "") if part
    )


def clock(minutes: float) -> str:
    """A moment of a time line, counted from its start.

    >>> clock(0), clock(75.4)
    ('0:00', '1:15')
    """
    hours, rest = divmod(round(minutes), 60)
    return f"{hours}:{rest:02}"


def timeline_lines(timeline: Timeline) -> tuple[str, ...]:
    """How long a batch takes, how much of it by hand, and what holds it up. An estimate, and called one."""
    proven = (
        "no order of the work is shorter"
        if timeline.shortest
        else f"no order of the work takes under {duration(timeline.bound)}"
    )
    return (
        f"From the first sheet to the last pad {duration(timeline.minutes)}, {duration(timeline.hands)} of it "
        f"by hand (an estimate, no breaks in it); {proven}.",
        f"What holds it up most: {_BOTTLENECK[timeline.bottleneck]}.",
    )
