"""Solving the few small sets of equations the fits need."""

from __future__ import annotations

Matrix = list[list[float]]


def invert(matrix: Matrix) -> Matrix | None:
    """Return the inverse of a square matrix by Gauss-Jordan, None if it has none."""
    size = len(matrix)
    rows = [[*row, *(1.0 if i == j else 0.0 for j in range(size))] for i, row in enumerate(matrix)]
    for column in range(size):
        pivot = max(range(column, size), key=lambda i: abs(rows[i][column]))
        if abs(rows[pivot][column]) < 1e-300:
            return None
        rows[column], rows[pivot] = rows[pivot], rows[column]
        lead = rows[column][column]
        rows[column] = [value / lead for value in rows[column]]
        for i in range(size):
            if i != column:
                factor = rows[i][column]
                rows[i] = [a - factor * b for a, b in zip(rows[i], rows[column], strict=True)]
    return [row[size:] for row in rows]


def apply(matrix: Matrix, vector: list[float]) -> list[float]:
    """Return matrix times vector."""
    return [sum(a * b for a, b in zip(row, vector, strict=True)) for row in matrix]
