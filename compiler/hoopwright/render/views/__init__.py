"""What each chapter of ``plan.md`` says, as printed text: one module a chapter, templates lay it out.

A view holds strings only, in the spec's units, rounded once. Text of the maker's own is still unescaped;
the template environment escapes it.
"""
