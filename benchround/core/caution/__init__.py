"""Cautions: how work can hurt someone, said at the step where it can."""
