"""Document in, Design out: defaults, palette and art; afterwards nothing is optional."""
