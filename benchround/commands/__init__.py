"""The commands of the shell, one file each."""
