"""Verifies an answer to a problem of sheets by rules of its own; nothing of the program is used.

The chance that enough come out good is the binomial distribution of scipy (see NIST/SEMATECH
e-Handbook 1.3.6.6.18), not the way that the program goes.
"""

from math import isclose

from scipy.special import bdtrc


def count_wanted(problem):
    """The least n of which `need` are good with the certainty, by trying one after another."""
    certainty, good, wanted = problem.get("certainty"), problem.get("good", {}), {}
    for part, need in problem["need"].items():
        n = need
        if certainty is not None and part in good and need:
            while bdtrc(need - 1, int(n), good[part]) < certainty - 1e-9:
                n += 1
        wanted[part] = n
    return wanted


def find_faults(problem, answer, wanted=None):
    """What is wrong with an answer, in words; empty: nothing. `wanted` may be known already."""
    wanted, faults = count_wanted(problem) if wanted is None else wanted, []
    files = {f["name"]: f for f in problem["files"]}
    counts = {s["cut_file"]: s["count"] for s in answer["sheets"]}
    if len(counts) < len(answer["sheets"]) or not set(counts) <= set(files):
        return ["a file twice, or one that is not there"]
    if any(type(n) is not int or n <= 0 for n in counts.values()):
        faults.append("a count that is no whole number above 0")
    made = {part: 0 for f in files.values() for part, each in f["makes"].items() if each}
    for name, n in counts.items():
        for part in files[name]["makes"].keys() & made:
            made[part] += files[name]["makes"][part] * n
    faults += [f"{p} short" for p, n in made.items() if n < wanted.get(p, 0)]
    uncovered = {u["part"]: u["quantity"] for u in answer["uncovered"]}
    if uncovered != {p: n for p, n in wanted.items() if n and p not in made}:
        faults.append("not the parts that no file makes")
    cost = sum(files[name]["minutes"] * n + files[name].get("fixed", 0.0)
               for name, n in counts.items())  # fmt: skip
    over = sum(n - wanted.get(p, 0) for p, n in made.items())
    cost += problem.get("over_cost", 0.0) * over
    if not isclose(cost, answer["objective"], rel_tol=1e-9, abs_tol=1e-6):
        faults.append(f"costs {cost}, not {answer['objective']}")
    if answer["lower_bound"] > answer["objective"] + 1e-6:
        faults.append("costs less than what is proven")
    return faults
