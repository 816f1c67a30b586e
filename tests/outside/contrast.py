"""What can be seen: WCAG 2.2, the web's guidelines for contrast."""

from tests.outside.value import PUBLISHED, Value

# what is looked at -> the least contrast between it and what is behind
TEXT = Value("text", 4.5, PUBLISHED, "WCAG 2.2, 1.4.3, contrast of text")
SHAPE = Value("shapes", 3.0, PUBLISHED, "WCAG 2.2, 1.4.11, contrast of what is no text")
# how light a colour is: shares of red, green and blue
SHARES = Value("light", (0.2126, 0.7152, 0.0722), PUBLISHED, "WCAG 2.2, relative luminance")
