"""Bytes in and out: a book's folder, the output folder, single files. Only the command line sees it."""
