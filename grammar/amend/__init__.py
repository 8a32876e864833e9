"""What one message says twice, takes back, adds together or only supposes."""
