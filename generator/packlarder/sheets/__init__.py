"""Sheets: what a page needs, complete and typed, in words and printed figures. No HTML, no sums."""
