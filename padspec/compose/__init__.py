"""Design in, Face (a scene in millimetres) out: one small file a block, a pattern, a row."""
