"""What several topics judge alike: limits, verdicts, what is to fit."""
