"""Text in, outlines out: direction, shaping, line breaks and fitting of lettering."""
