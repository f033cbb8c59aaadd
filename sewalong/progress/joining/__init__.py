"""Joining rows into a top: tags, the order of the joins, which way seams are pressed."""
