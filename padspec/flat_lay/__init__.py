"""Faces of finished pads in, a picture for a shop's page out: pads lying flat, seen from above.

Lengths are millimetres until a `View` makes pixels of them. Light is added up in linear sRGB.
"""
