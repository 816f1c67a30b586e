"""Asks the program what a written sheet is. This is the only file here that knows the program."""

from tests.sheets.truth import Found


def read_sheet(
    text: str,
    thickness: float,
    sheet_size: tuple[float, float],
    zero: str,
    bit_in_spindle: float | None,
) -> Found:
    """Reads one cut file.

    `zero` is "top" or "bed" (the spoilboard's face), X0 Y0 the sheet's lower left corner,
    `bit_in_spindle` the diameter in mm of the bit that is in as the file begins, None when
    only the file tells. Problems are named by the kinds of `faults.KINDS`.
    """
    raise NotImplementedError
