"""Sheet and cut plan in, the drawing of the cuts out."""
