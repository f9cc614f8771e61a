"""Tests of the art stage: picture bytes in, sRGB pixels out."""
