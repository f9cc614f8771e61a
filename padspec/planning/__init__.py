"""Orders and sheets in, a plan out: what to print how often, which designs share a sheet."""
