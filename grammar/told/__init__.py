"""Ways of telling a fact that need more than a word list, a small file each, by subject."""
