"""padspec: from one YAML spec and a picture to a checked, tiled, print-ready list pad."""

__version__ = "0.1.0"
