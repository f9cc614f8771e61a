"""Studio in, artwork of one black out: for the back of the board or a rubber stamp."""
