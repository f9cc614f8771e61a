"""The soft proof: what the separations will look like on their paper, shown on a screen."""

from padspec.press.conversion import Steps
from padspec.press.separate import Separator


def soft_proof(separations: Steps, separator: Separator) -> Steps:
    """sRGB steps, shape (height, width, 3), of separations, shape (height, width, 4).

    Absolute colorimetric (ICC.1:2010, 6.2): bare paper shows in its own colour, and black as pale as it prints.
    It is made from the very inks, so that what prints black only or with few inks looks as it will.
    """
    return separator.conversion.screen(separations)
