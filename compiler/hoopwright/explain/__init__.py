"""Pages for people: one Markdown page for each diagnostic code, check and word of the trade."""
