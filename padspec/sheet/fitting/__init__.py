"""Trims and paper in, the arrangement that is best out: grids, and mixtures that straight cuts can part."""
