"""Picture files of pixels: told apart, decoded, turned upright, brought to sRGB."""
