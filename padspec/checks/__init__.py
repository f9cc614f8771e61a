"""Design, face and sheet in; findings out. One file a check, one line each in table.py."""
