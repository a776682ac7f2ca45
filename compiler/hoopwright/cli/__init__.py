"""Command line: arguments, exit codes, files; nothing else."""
