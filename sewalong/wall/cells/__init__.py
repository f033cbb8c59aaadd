"""The wall in cells of the screen: part of it or all, each place drawn anew on its own."""
