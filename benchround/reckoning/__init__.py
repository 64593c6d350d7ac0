"""Single sums for the shell: one file a subject, each with its arguments and its answer."""
