"""The season folder on disk."""
