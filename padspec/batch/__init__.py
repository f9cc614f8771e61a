"""A planned job with all that is made of it: blocks, boards, adhesive, magnets, sleeves."""
