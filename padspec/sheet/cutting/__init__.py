"""How a sheet is cut: the ordered cuts, what they leave over, butted against guttered, and the words for it."""
