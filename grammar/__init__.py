"""What can be said to the battery desk: text in, quantities, facts, cues and clauses out. Knows no rule and no answer."""
