"""What a collection holds, to look through and to order from: a page, a table and data."""
