"""Picture bytes in; upright sRGB pixels, cut out, trimmed and sampled, out."""
