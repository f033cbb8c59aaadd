"""What the owner prefers, for all her quilts: keys, unit, session, wear, words of caution of her own."""
