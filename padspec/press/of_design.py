"""The press that a design's studio sends work to."""

from functools import lru_cache

from padspec.base.errors import Problem, ProblemsError
from padspec.press.profile import Press, ProfileError, read_profile
from padspec.press.separate import Separator
from padspec.resolve.design import Design
from padspec.resolve.studio import Press as PressWish


def separator_of(design: Design) -> Separator | None:
    """What separates a design's colours; None where its studio sends no work out.

    Raises ProblemsError for a profile that cannot be used.
    """
    wish = design.studio.press
    return None if wish is None else _separator(wish)


# Every design of a studio goes to the same press, and each colour is worked out once.
@lru_cache(maxsize=2)
def _separator(wish: PressWish) -> Separator:
    try:
        profile = read_profile(wish.profile, wish.profile_file)
    except ProfileError as error:
        raise ProblemsError(Problem(wish.place, error.message, error.mend)) from None
    return Separator(Press(profile, wish.intent, wish.black_point))
