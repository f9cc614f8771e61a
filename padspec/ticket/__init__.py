"""The job ticket: everything the workshop needs for one batch, as a page to print and as data."""
