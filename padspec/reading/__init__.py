"""Text in; a tree of values that remember line and column, checked against a schema, out."""
