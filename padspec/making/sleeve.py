"""A pad and its sleeve in, how it fits out: the air across and along beyond its girth and length."""

from dataclasses import dataclass

from padspec.base.geometry import Size
from padspec.base.sleeve_fit import least_bag
from padspec.making.block import Block
from padspec.resolve.design import Design
from padspec.resolve.workbench import Sleeve


@dataclass(frozen=True, slots=True)
class SleeveFit:
    """`least` is the smallest bag that the pad goes into at all, `spare` the air in this one (negative where it
    does not go in), `tightest` the air that is left if paper and board come as thick as they may.
    """

    sleeve: Sleeve
    least: Size
    spare: Size
    tightest: Size


def fit_in(sleeve: Sleeve, design: Design, block: Block) -> SleeveFit:
    """How the pad of a design sits in a sleeve."""
    least = least_bag(design.trim, block.thickness.value)
    thickest = least_bag(design.trim, block.thickness.value + block.thickness.error)
    return SleeveFit(
        sleeve,
        least,
        Size(sleeve.size.width - least.width, sleeve.size.height - least.height),
        Size(sleeve.size.width - thickest.width, sleeve.size.height - thickest.height),
    )
