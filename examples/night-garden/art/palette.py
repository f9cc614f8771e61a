"""The Night garden colours, shared by every picture.

In: nothing. Out: named colours as `#rrggbb`, and `Paint` recipes mixed from
them. Each picture leads with one family and borrows accents from the others.
"""

from __future__ import annotations

from brush import Paint

INK = "#1d1b3a"
NIGHT = "#2a2850"
CREAM = "#f7ecd2"
SILVER = "#d3dfc4"
GOLD = "#e8b64c"
AMBER = "#d98a3a"

PLUM = "#4b2c5c"
VIOLET = "#77538f"
LILAC = "#b79cc6"
MIST = "#dccfe0"

BOTTLE = "#1c3b3c"
MOSS = "#3f6350"
SAGE = "#7c9c7c"
FROND = "#a9bf93"

RUSSET = "#a34a2a"
RUST = "#6d2c25"
APRICOT = "#eda869"
BARK = "#3c2230"

CORAL = "#dd5547"
BERRY = "#a02c48"
ROSE = "#e78f8a"
BLUSH = "#f6c8b4"

MAGENTA = "#b5387f"
PINK = "#dd77ae"
WINE = "#6f1f5c"

DEEP = "#15304f"
TEAL = "#1f5d6d"
SEA = "#4e9499"
FOAM = "#b4d3cb"

LEAF = Paint(MOSS, BOTTLE, SAGE, rim=SILVER, rim_strength=0.55, rim_width=2)
LEAF_PALE = Paint(SAGE, MOSS, FROND, rim=SILVER, rim_strength=0.6, rim_width=2)
LEAF_DARK = Paint(BOTTLE, "#142a33", MOSS, rim=SAGE, rim_strength=0.4, rim_width=2)
