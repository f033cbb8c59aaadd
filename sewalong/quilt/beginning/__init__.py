"""A quilt by a few questions: what is asked, what holds unasked, and the quilt that answers make."""
