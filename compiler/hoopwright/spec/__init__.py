"""Spec stage: values in, a typed Spec or findings out. Schema, references, defaults."""
