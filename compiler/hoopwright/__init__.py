"""Hoopwright: a plain-text compiler for hooped understructures of historical dress."""

__version__ = "0.1.0"
