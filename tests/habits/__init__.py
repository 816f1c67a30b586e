"""Cut files in the habits of common post-processors and programmers, with their truth."""
