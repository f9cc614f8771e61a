"""Taking an even background away: measure it, flood it, un-mix the edge."""
