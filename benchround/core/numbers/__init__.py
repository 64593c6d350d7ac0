"""Distributions, small sets of equations and range checks on the standard library alone."""
