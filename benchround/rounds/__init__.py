"""One file per task family: what each day asks for, and why."""
