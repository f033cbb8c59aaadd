"""sewalong: a terminal companion for piecing a patchwork top in batches."""

__version__ = "0.1.0"
