"""Face in, Sheet out: fit, slots, marks, slug, copies."""
