"""What a message tells or asks in words that no fact and no cue holds."""
