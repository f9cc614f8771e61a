"""Studio or design in, pages to print and measure out: calibration, colour strip."""
