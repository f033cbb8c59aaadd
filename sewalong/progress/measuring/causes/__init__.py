"""What does this measurement mean? Pieces that can be measured, verdicts and diagnoses."""
