"""Pads and a sheet of labels in, the sheets of price tags with their symbols out."""
