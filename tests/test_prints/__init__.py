"""Tests of the pages that are printed to be measured: calibration and colour strip."""
