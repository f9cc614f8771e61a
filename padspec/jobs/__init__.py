"""A job in (how many pads of which designs), a plan out: pages to print, cuts, chances, paper, ink."""
