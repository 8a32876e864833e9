"""What the command line does beyond one question: bench, terminal, tables, replays, scores."""
