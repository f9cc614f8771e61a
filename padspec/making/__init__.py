"""Design, Face and Sheet in, the figures of the workshop out: ink."""
