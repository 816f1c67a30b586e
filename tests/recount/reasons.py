"""Why a figure of a screen or paper is not counted again, by its name."""

import re
from dataclasses import fields

from tests.recount.books import Books

TYPED = "typed in hand, in the history once it goes on"
PLAN = "chosen or foreseen by the plan, counted in tests/planning"
WHICH = "which thing it is about"
ASKED = "asked about a number that was just typed"
KEPT = "a text that an act has kept"
FORM = r"^office, table '(\{kind\} \{id\}|\{thing\}, page \{page\} of \{pages\})"
REASONS: tuple[tuple[str, str], ...] = (
    (r"table 'part \| (cut|came) \|.*, [5-8]: ", TYPED),
    (r"(popping|trimming), list '', 1: ", TYPED),
    (r", typed '", TYPED),
    (r"(Put \{n\} back|A number up to \{n\}: how many|\{n\} of it|\{g\} g: )", TYPED),
    (r"^office, table '(\{kind\} \{id\}: |\{what\}: \{field\})", TYPED),
    (FORM + "', 3", "typed in a form, or proposed for a new thing"),
    (r"hint '(\{reading\} mm read|Sheet \{sheet\}|Why |First-off is wrong)", ASKED),
    (r"hint 'Is the spoilboard of", WHICH),
    (r"checks 'Before sheet \{n\}', 2: new bit", KEPT),
    (r"^office, pairs 'From the work', 2: \{n\}", "how many mailers are left, counted at packing"),
    (r"^packing, pairs .*\{g\} ± \{p\} g", "learnt from packs that were weighed, in tests/packs"),
    (r"^packing, pairs '(Mailer .*)?', 2: [A-Z]{2}-#", "which of its parts a scale can't tell"),
    (r"^handover: .* history to", "a digest of the history, in tests/ledger"),
    (r"^packing, pairs '', 2: .*: can't tell", "what a scale can't tell, in tests/packs"),
    (r", list '(What to do when|Many PCs)'", "a line of the handbook"),
    (r"'Against the master', 2: .* mm as drawn", "the size of a part, of its file alone"),
    (r"on the scale, \{grams\}", ASKED),
    (r"^office, hint 'A new PIN", WHICH),
    (r"^office, list 'Against approved", "two revisions side by side, of the files alone"),
    (r"^packing, (header 'For the shelf', 2|hint 'Bag set|buttons '', 1: Close set)", TYPED),
    (r"with “\{text\}”: .*, its title", ASKED),
    (r"(Printers and papers|Open pack \{pack\} again|All like it)", WHICH),
    (r"What is the new bit", "a size of a bit, as it was entered"),
    (r"(waits: \{why\}|\{n\} \{part\} came back|, header 'counted'|What came back)", TYPED),
    (r"^today, places '', 4: ", "half way between two figures, either is right"),
    (r"like it (are|is|are\}) settled with it", "a question to a person"),
    (r"Type or touch one', 1: A#$", "a size of paper"),
    (r"header 'Lot', 3: Look twice", KEPT),
    (r"^office, table '(Rack|Lot) \{(name|id)\}'(, its title|, [12]:)", WHICH),
    (r"CSV files in", "a folder of this PC"),
    (r"^office, table '\{name\}'", "a count to be corrected, in the office's own tests"),
    (r"page \{page\} of \{count\}', its title", "the page of a list"),
    (r"a number now changes the", TYPED),
    (r", where '', ", "the place of this screen"),
    (r"^office, cards 'Which router", PLAN),
    (r"^plan, (pairs|buttons|table|decision|list) ", PLAN),
    (r"^office, (hint 'Release|list 'Not good off it in .* its title)", WHICH),
    (FORM + ".*its title", WHICH),
    (r"Counted \{counted\}, the book says", ASKED),
    (r"'Mailer \{name\}', its title", WHICH),
    (r"(PIN of supervisor|Why may batch|is planned for)", WHICH),
    (r"(Batch \{batch\}', its title|needs you next', 1)", WHICH),
    (r"can't tell yet: \{n\} of", "how many sheets a router's time is learnt from"),
    (r"^packing, pairs '\{n\} × \{part\} short', 2: leaves ", "the days of carts, in tests/floor"),
    (
        r"^loading, (header 'Go first to'|table 'Bring along'|buttons '', 1: Go to )",
        "who is needed next, in tests/queries",
    ),
    (
        r", list '(Packs that left last|Or parts alone)'",
        "what left, to choose from; in tests/floor",
    ),
    (r"hint 'How many are there: \{name\}\?'", WHICH),
    (r"let it send F#", "the name of a key"),
    (r"(Held: |set it: |One more was added|place \{place\})", KEPT),
)


def find_reason(books: Books, name: str, text: str) -> str:
    """Says why a figure is not counted again; nothing where it should be."""
    for like, reason in REASONS:
        if re.search(like, name):
            return reason
    if "{" not in name.rpartition(": ")[2] and text in books.once(
        "typed", lambda: _list_typed(books)
    ):
        return "a name, a number of a thing or a typed text"
    return ""


def _list_typed(books: Books) -> set[str]:
    """Every text that was typed as it stands: numbers and names of things, their words."""
    found = set()
    for fact in books.facts.values():
        for field in fields(fact):
            value = getattr(fact, field.name)
            if isinstance(value, str):
                found.add(value)
    return found
