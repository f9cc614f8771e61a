"""Leaves that import nothing of padspec: lengths, geometry, colour, places, findings, errors."""
