"""The work of a batch as tasks, and the tasks as a time line for one pair of hands."""
