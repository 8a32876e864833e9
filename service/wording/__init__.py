"""How an answer opens and what it is fitted to: the question as put, claims, beliefs, choices."""
