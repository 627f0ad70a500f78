"""Thin adapters that set sheets: the site, paper, single files, data. No sums."""
