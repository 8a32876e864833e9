"""Where the house's own rules meet an answer: the stricter stands."""
