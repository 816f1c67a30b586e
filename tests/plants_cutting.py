"""Lines of reading and working out cut files broken on purpose, and of their runs."""

from tests.plants import Plant

CUT = "station/cutting"
READ, GEOMETRY, ANALYSE = f"{CUT}/read", f"{CUT}/geometry", f"{CUT}/analyse"
TIME = ("tests/cutting/analyse/test_time.py",)
SIZES = ("tests/cutting/geometry/test_parts.py", "tests/cutting/analyse/test_workshop.py")
MODES = ("tests/cutting/read/test_modal.py", "tests/cutting/read/test_reads.py")
CYCLES = ("tests/cutting/read/test_cycles.py", "tests/cutting/read/test_reads.py")
WRONG = ("tests/cutting/analyse/test_path_problems.py",)
RUNS = ("tests/queries/test_runs.py", "replay:21")
LOADING = "station/floor/loading"

CUTTING = (
    Plant(f"{ANALYSE}/time.py", "ahead = min(v2[i], ahead + 2", "ahead = v2[i] + (0 * ahead + 2",
          "look-ahead that does not slow down in time", TIME),
    Plant(f"{ANALYSE}/time.py", "v2[i] = behind = min(v2[i], behind)", "v2[i] = behind = v2[i]",
          "a router at full speed at once", TIME),
    Plant(f"{ANALYSE}/time.py", "share = max(abs(x) / ax, abs(y) / ay, abs(z) / az)",
          "share = max(abs(x) / ax, abs(y) / ay, abs(z) / ax)",
          "Z as quick as X and Y", (*TIME, "tests/cutting/analyse/test_works_out.py")),
    Plant(f"{GEOMETRY}/faces.py", "shapely.buffer(lines, radius, quad_segs=quarter)",
          "shapely.buffer(lines, 0.9 * radius, quad_segs=quarter)",
          "a cut narrower than its bit", SIZES),
    Plant(f"{GEOMETRY}/pieces.py", "        holes=tuple(holes),\n", "        holes=(),\n",
          "a part without its holes", SIZES),
    Plant(f"{GEOMETRY}/pieces.py",
          "height_mm=float(min(some.top[n], levels.face) - levels.bottom),",
          "height_mm=float(levels.face - levels.bottom),",
          "every tab as high as the sheet", SIZES),
    Plant(f"{GEOMETRY}/pieces.py", "width_mm=float(length.max()),",
          "width_mm=float(length.max() + 2 * some.radius[n]),",
          "tabs as wide as the bit jumps", SIZES),
    Plant(f"{READ}/execute_compiled.py", "s.scale = MM_PER_INCH if s.codes[UNITS] == 200 else 1.0",
          "s.scale = MM_PER_INCH if s.codes[UNITS] == 210 else 1.0",
          "inches read as millimetres", MODES),
    Plant("station/shop/lengths.py", "MM_PER_INCH = 25.4\n", "MM_PER_INCH = 25.0\n",
          "an inch that is none", MODES),
    Plant(f"{READ}/text.py", "if word is None or (", "if False and (",
          "a unit word in a remark sets the units", MODES),
    Plant(f"{READ}/execute_compiled.py", "            end += value\n", "            end = value\n",
          "incremental moves read as absolute", MODES),
    Plant(f"{READ}/execute_plain.py", '        state.absolute = codes["distance"] == 90',
          '        state.absolute = codes["distance"] == 91', "G90 and G91 the wrong way", MODES),
    Plant(f"{READ}/cycles_compiled.py", "began = s.series if s.return_first else s.at[deep]",
          "began = s.at[deep] if s.return_first else s.series",
          "G98 goes back to where the series began", CYCLES),
    Plant(f"{READ}/cycles_compiled.py", "max(began, clear) if s.back_to == 98 else clear)",
          "clear)", "G98 stops at R", CYCLES),
    Plant(f"{READ}/execute_plain.py", "(named if state.dialect.home_named else ()) or (0, 1, 2)",
          "named or (0, 1, 2)", "G28 leaves axes where they are", MODES),
    Plant(f"{READ}/arcs_compiled.py", "== (radius > 0) else", "== (radius < 0) else",
          "arcs by radius on the wrong side", ("tests/cutting/read/test_arcs.py",)),
    Plant(f"{ANALYSE}/path_problems.py", "floor = inferred.bottom - inferred.spoilboard",
          "floor = inferred.bottom - 100", "a cut into the bed is not told", WRONG),
    Plant(f"{ANALYSE}/path_problems.py", "rapid &= ~_pick_unplaced(moves, inferred.face)",
          "rapid &= False", "a rapid through the sheet is not told", WRONG),
    Plant(f"{ANALYSE}/hold_downs.py", " & ~_find_piece_cells(analysis, long, wide)", "",
          "a hold-down on what is sold", ("tests/cutting/analyse/test_hold_downs.py",)),
    Plant(f"{GEOMETRY}/lost_tabs.py", "lifts = _find_lifts(cuts, levels)",
          "lifts = np.zeros((0, 2), int)", "laps that cut a tab away are not seen",
          (*SIZES, "tests/cutting/geometry/test_lost_tabs.py")),
    Plant(f"{LOADING}/rules_off.py", "    if bed.run < len(runs):",
          "    if bed.run < 0:", "a sheet at popping before its last run", RUNS),
    Plant(f"{LOADING}/rules_off.py", "run = runs[bed.run - 1] if", "run = runs[0] if",
          "the last run wears like the first", RUNS),
    Plant("station/queries/routers.py", "return runs[bed.run - 1] if", "return runs[0] if",
          "the second run wears and lasts like the first", RUNS),
    Plant("station/queries/runs.py",
          "if run < len(runs) and (anywhere or runs[run].takes(bed.id)):", "if run < len(runs):",
          "a run on a router that cannot run it", RUNS),
    Plant(f"{LOADING}/rules_start.py",
          "    return refuse_unapproved_run(sheet.view, sheet.batch, sheet.file)",
          "    return None", "a run of a revision that nobody approved", RUNS),
)  # fmt: skip
