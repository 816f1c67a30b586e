"""``python -m resources.sounds``: makes the station's sounds anew beside this file."""

from pathlib import Path

from resources.sounds.made import SOUNDS, wave_file


def main() -> None:
    """Writes one WAV file a sound."""
    for name in SOUNDS:
        Path(__file__).with_name(f"{name}.wav").write_bytes(wave_file(name))


if __name__ == "__main__":
    main()
