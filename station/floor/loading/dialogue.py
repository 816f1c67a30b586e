"""What an input means at the cutting bed: a code, a button or a number."""

from station.floor.loading.before import Now, counts, no_next, now, what_next
from station.floor.loading.buttons import BUTTON_STEPS
from station.floor.loading.codes import CODE_STEPS
from station.floor.loading.material import outside
from station.shop.acts import Answer, good, refuse
from station.shop.cards import BY_NUMBER
from station.shop.codes import Code
from station.shop.rooms import Do, Hand, Input, Number, Run, Took
from station.shop.views import View
from station.shop.words import Say, say


def handle_input(hand: Hand, given: Input, view: View) -> Do | Took | Run | None:
    """One input at the cutting bed."""
    here = now(hand, view)
    if isinstance(given, Number):
        return _number(here, given)
    if not isinstance(given, Code):
        return None
    if given.kind == "button":
        card = BY_NUMBER.get(given.number)
        handler = BUTTON_STEPS.get(card.name) if card else None
        return handler(here) if handler else None
    code_handler = CODE_STEPS.get(given.kind)
    return code_handler(here, given) if code_handler else None


def _number(here: Now, given: Number) -> Took | None:
    if here.mode == "spoil":
        return _survived(here, given)
    revision, value = here.revision, given.reading
    if revision is None:
        return None
    if value is None or not 0 < value < 1000:
        return Took(
            here.hand,
            refuse(say("That is no thickness"), say("Enter the reading in mm, such as 6.4.")),
        )
    if last := no_next(here):
        return Took(here.hand, last)
    hand = here.hand.with_work(reading=value)
    if wrong := outside(here.view, revision, value):
        return Took(hand, _stop(wrong, say("Not this sheet: measure again, or ask.")))
    return Took(hand, good(say("{mm} mm: within limits", mm=f"{value:g}"), what_next(here, hand)))


def _survived(here: Now, given: Number) -> Took:
    """A count of what survived, of the part chosen (or the only one)."""
    makes = here.revision.makes() if here.revision else {}
    part = str(here.hand.work.get("part") or "") or next(iter(makes), "")
    most, count = makes.get(part, 0), given.whole
    if count is None or count > most:
        return Took(
            here.hand,
            refuse(
                say("A sheet has {most} of these", most=most),
                say("Enter a number from 0 to {most}.", most=most),
            ),
        )
    hand = here.hand.with_work(survived={**counts(here.hand), part: count}, part=part)
    return Took(
        hand,
        good(
            say("{count} of {most} {count|is|are} whole", count=count, most=most), CONFIRM_SPOILED
        ),
    )


CONFIRM_SPOILED = say("“Sheet spoiled” again when it is complete.")


def _stop(said: Say, do: Say) -> Answer:
    """Understood and kept, but wrong: shown in red."""
    return Answer(tone="stop", said=said, do=do, refused=True)
