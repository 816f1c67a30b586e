"""The station's four sounds, made from sine tones with the standard library alone.

They differ in rhythm and direction, not in pitch alone: a shop is loud, and nobody should
need a good ear. One short tone: done. Two that rise: a question. Two long low ones: not
done. Three short ones: done, but somebody should look.
"""

import array
import io
import math
import sys
import wave

RATE = 22_050  # samples a second
LOUD = 0.6  # of full scale
SOFT_S = 0.006  # s in which a tone comes and goes, so that it does not click

# of each tone: pitch in Hz (0: silence) and length in s
SOUNDS: dict[str, tuple[tuple[float, float], ...]] = {
    "good": ((880, 0.07),),
    "ask": ((587, 0.11), (0, 0.03), (880, 0.16)),
    "refuse": ((233, 0.2), (0, 0.07), (196, 0.28)),
    "look": ((698, 0.07), (0, 0.05), (698, 0.07), (0, 0.05), (698, 0.07)),
}


def wave_file(name: str) -> bytes:
    """A sound as a WAV file: one channel, 16 bit."""
    samples = array.array("h")
    for pitch, length in SOUNDS[name]:
        samples.extend(tone(pitch, length))
    if sys.byteorder == "big":
        samples.byteswap()
    held = io.BytesIO()
    with wave.open(held, "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(RATE)
        file.writeframes(samples.tobytes())
    return held.getvalue()


def tone(pitch: float, length: float) -> list[int]:
    """The samples of one tone with its third overtone, which small speakers carry better."""
    count = round(length * RATE)
    return [
        round(32_767 * LOUD * _swell(n, count) * _sound(2 * math.pi * pitch * n / RATE))
        for n in range(count)
    ]


def _sound(angle: float) -> float:
    return 0.8 * math.sin(angle) + 0.2 * math.sin(3 * angle)


def _swell(n: int, count: int) -> float:
    """From silence to full and back."""
    return min(1.0, n / (SOFT_S * RATE), (count - 1 - n) / (SOFT_S * RATE))
