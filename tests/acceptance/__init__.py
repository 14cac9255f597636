"""What a maker was promised, seen from outside."""
