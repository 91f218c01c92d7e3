"""The plan language's grammar and its compiled tables."""
