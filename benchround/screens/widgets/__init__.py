"""Widgets of the screens: paper to write on, the list of tasks, forms, the foot."""
