"""Signs of danger in a text, and how far each counts."""
