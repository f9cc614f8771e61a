"""The commands: one file each, and the only place that prints."""
