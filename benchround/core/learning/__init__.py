"""What the grower's own sowings teach, always beside the library's figures."""
