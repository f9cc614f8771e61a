"""SVG pictures: read, held to what is inside them, drawn as pixels or kept as vectors."""
