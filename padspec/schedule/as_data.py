"""A time line as plain data."""

from typing import Any

from padspec.schedule.timeline import Placed, Timeline


def timeline_data(timeline: Timeline) -> dict[str, Any]:
    """Minutes from the start of the batch."""
    return {
        "minutes": round(timeline.minutes, 3),
        "minutes_by_hand": round(timeline.hands, 3),
        "no_less_than": round(timeline.bound, 3),
        "bottleneck": timeline.bottleneck,
        "tasks": [_task(one) for one in timeline.placed],
    }


def _task(one: Placed) -> dict[str, Any]:
    task = one.task
    return {
        "stage": task.stage,
        "of": task.what,
        "busy": list(task.busy),
        "load": task.load or None,
        "start": round(one.start, 3),
        "end": round(one.end, 3),
    }
