"""Scene and sheet in, files for a press out: CMYK, separations, soft proof."""
