"""What the trade knows: pure functions and frozen records."""
