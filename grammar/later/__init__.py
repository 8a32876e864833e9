"""What a later message means by what was said before: bare replies, corrections, bare figures."""
