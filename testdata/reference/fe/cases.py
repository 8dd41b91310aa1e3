"""The cases: floors that are drawn by chance from a fixed seed, and their beams.

Sizes, spacings, moduli and loads are those that floors have; the floors
themselves are invented. Every number is rounded before use, so that the table
holds exactly what the solver was given.
"""

import random

from solver import Beam, Member

SEED = 20260101

# Width and depth in inches: dressed lumber (Voluntary Product Standard PS
# 20-20), and full-sawn pieces as old houses have them.
SECTIONS = [(1.5, 5.5), (1.5, 7.25), (1.5, 9.25), (1.5, 11.25), (2.0, 8.0), (2.0, 10.0), (3.0, 8.0), (3.5, 9.25)]

SPACINGS = [12.0, 16.0, 19.2, 24.0]

# Sheets: thickness in inches.
SHEETS = [0.59375, 0.71875, 0.75, 0.875, 1.125]

# A joist 1.5 in wide leaves a clear bay of spacing less 1.5 in; sheets are
# reckoned over the clear bay and 0.25 in of bearing (APA D510C, 2012, uniform
# loads: span for deflection on 2 in nominal framing).
PANEL_BEARING = 1.5 - 0.25

# By kind: how many cases, how many bays of equal length, and which of them
# bear the uniform load. Dead load lies on all.
KINDS = {
    "simple, uniform": (40, 1, {0}),
    "simple, point at mid span": (25, 1, set()),
    "simple, two points": (25, 1, set()),
    "two spans, both loaded": (20, 2, {0, 1}),
    "two spans, one loaded": (20, 2, {0}),
    "three spans, all loaded": (20, 3, {0, 1, 2}),
    "three spans, outer two loaded": (20, 3, {0, 2}),
    "overhang loaded, tip": (20, 1, set()),
    "full-length sister": (30, 1, {0}),
    "mid-span support added, one bay loaded": (15, 2, {0}),
    "mid-span support added, both bays loaded": (15, 2, {0, 1}),
    "panel, one span": (15, 1, {0}),
    "panel, two spans": (15, 2, {0, 1}),
    "panel, three spans": (15, 3, {0, 1, 2}),
    "two spans, point at mid span of one": (15, 2, set()),
    "three spans, point at mid span of an outer one": (15, 3, set()),
    "simple, uniform and point at mid span": (15, 1, {0}),
    "two spans, live load on one, dead load on both": (15, 2, {0}),
    "three spans, live load on outer two, dead load on all": (15, 3, {0, 2}),
    "panel of two sheets, two spans": (15, 2, {0, 1}),
}


def cases() -> list[dict]:
    """Every case as a row of inputs in US units, in a fixed order."""
    chance = random.Random(SEED)
    rows = []
    for kind, (count, _, _) in KINDS.items():
        for _ in range(count):
            row = panel(chance, kind) if kind.startswith("panel") else joist(chance, kind)
            rows.append({"id": f"FE{len(rows) + 1:03}", "kind": kind, **row})
    return rows


def joist(chance: random.Random, kind: str) -> dict:
    """A joist: span 14 to 22 times the depth, to the quarter inch."""
    width, depth = chance.choice(SECTIONS)
    row = {"width_in": width, "depth_in": depth, "modulus_psi": modulus(chance)}
    row["span_in"] = quarter(chance.uniform(14, 22) * depth)
    if "point" in kind:
        row["point_lb"] = float(chance.randrange(150, 650, 10))
        row["point_at_in"] = row["span_in"] / 2 if "mid" in kind else quarter(row["span_in"] * chance.uniform(0.1, 0.45))
    if "point" not in kind or "uniform" in kind:
        row |= {"spacing_in": chance.choice(SPACINGS), "load_psf": float(chance.randrange(30, 75, 5))}
    if "dead" in kind:
        row["dead_psf"] = float(chance.randrange(10, 32, 2))
    if "overhang" in kind:
        row["overhang_in"] = chance.randrange(24, 97) / 4
    if "sister" in kind:
        row["sister_width_in"], row["sister_depth_in"] = chance.choice(SECTIONS)
        row["sister_modulus_psi"] = modulus(chance)
    return row


def panel(chance: random.Random, kind: str) -> dict:
    """Sheets over joists: one, or two of unlike thickness on each other."""
    spacing = chance.choice(SPACINGS)
    row = {"spacing_in": spacing, "span_in": spacing - PANEL_BEARING, "load_psf": float(chance.randrange(40, 105, 5))}
    row["sheet_thickness_in"], row["sheet_stiffness_lbf_in2_per_ft"] = sheet(chance)
    if "two sheets" in kind:
        row["second_sheet_thickness_in"], row["second_sheet_stiffness_lbf_in2_per_ft"] = sheet(chance)
    return row


def sheet(chance: random.Random) -> tuple[float, float]:
    """A thickness, and a stiffness to the thousand lbf-in2 a foot of width."""
    thickness = chance.choice(SHEETS)
    return thickness, round(thickness**3 * chance.uniform(0.5e6, 1.6e6), -3)


def quarter(inches: float) -> float:
    """A length to the quarter inch."""
    return round(inches * 4) / 4


def modulus(chance: random.Random) -> float:
    """A modulus of elasticity, psi, as the lumber tables print them."""
    return float(chance.randrange(900_000, 2_000_000, 100_000))


def beam(row: dict) -> Beam:
    """The beam that a row describes."""
    kind, (_, bays, loaded) = row["kind"], KINDS[row["kind"]]
    bay = row["span_in"] / 2 if "support added" in kind else row["span_in"]
    supports = tuple(bay * i for i in range(bays + 1))
    breadth = 12.0 if kind.startswith("panel") else row.get("spacing_in", 0.0)
    live, dead = (row.get(load, 0.0) * breadth / 144 for load in ("load_psf", "dead_psf"))
    lines = [(bay * i, bay * (i + 1), dead + live * (i in loaded)) for i in range(bays)]
    end = supports[-1] + row.get("overhang_in", 0.0)
    lines.append((supports[-1], end, live))
    return Beam(end, members(row), supports, tuple(line for line in lines if line[0] < line[1] and line[2] > 0), points(row))


def members(row: dict) -> tuple[Member, ...]:
    """The pieces that bend together; a sheet is a strip one foot wide."""
    pieces = []
    for of in ("", "sister_"):
        if of + "width_in" in row:
            pieces.append(Member(row[of + "width_in"], row[of + "depth_in"], row[of + "modulus_psi"]))
    for of in ("", "second_"):
        if of + "sheet_thickness_in" in row:
            thickness, stiffness = row[of + "sheet_thickness_in"], row[of + "sheet_stiffness_lbf_in2_per_ft"]
            pieces.append(Member(12.0, thickness, stiffness / thickness**3))
    return tuple(pieces)


def points(row: dict) -> tuple[tuple[float, float], ...]:
    """The point loads; two stand alike from either end."""
    if "point_lb" not in row:
        return ()
    at, force = row["point_at_in"], row["point_lb"]
    places = [at, row["span_in"] - at] if "two points" in row["kind"] else [at]
    return tuple((place, force) for place in places)
