"""Builds on several machines: what is packed and sent, who is let in, and what is done where one ends."""
