"""The colour that a picture lies on, as it is named on the command line."""

from padspec.base.colour import Colour
from padspec.base.nearest import did_you_mean
from padspec.cli.say import one_problem
from padspec.resolve.design import Design


def backdrop_colour(text: str, design: Design) -> Colour:
    """A colour as it is named on the command line. Raises ProblemsError."""
    from PIL.ImageColor import colormap, getrgb

    palette = dict(design.palette)
    if text in palette:
        return palette[text]
    if text.startswith("#"):
        try:
            return Colour.from_hex(text)
        except ValueError:
            mend = "Write three or six digits of 0-9 and a-f, such as #f4ecde."
            raise one_problem("--backdrop", f"{text} is not a colour.", mend) from None
    if text.lower() in colormap:
        return Colour(*getrgb(text.lower())[:3])
    mend = did_you_mean(text, (*palette, *colormap))
    likely = f"{mend} " if mend.startswith("Did") else ""
    raise one_problem(
        "--backdrop",
        f"{text} is not a colour.",
        f"{likely}Write #rrggbb, a CSS name such as linen, or a name of the palette: {', '.join(palette)}.",
    )
