"""How parts lie in a mailer, and which mailer: figures alone, of no shop in particular."""
