"""A batch, and how its records are told one after another."""
