"""Errors of printer and cutter in, the chances of a white edge or an off-centre panel out."""
