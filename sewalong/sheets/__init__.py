"""A quilt on paper: what its printed pages say, and the pages themselves."""
