"""Personal runs: every pad for somebody, from the rows of a table to volumes of sheets to print."""
