"""Text in; a tree of values with their places, or what is wrong with the YAML, out."""
