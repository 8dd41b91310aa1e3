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

# Kind and how many cases of it.
KINDS = {
    "simple, uniform": 40,
    "simple, point at mid span": 25,
    "simple, two points": 25,
    "two spans, both loaded": 20,
    "two spans, one loaded": 20,
    "three spans, all loaded": 20,
    "three spans, outer two loaded": 20,
    "overhang loaded, tip": 20,
    "full-length sister": 30,
    "mid-span support added, one bay loaded": 15,
    "mid-span support added, both bays loaded": 15,
    "panel, one span": 15,
    "panel, two spans": 15,
    "panel, three spans": 15,
}


def cases() -> list[dict]:
    """Every case as a row of inputs in US units, in a fixed order."""
    chance = random.Random(SEED)
    rows = []
    for kind, count in KINDS.items():
        for _ in range(count):
            row = panel(chance) if kind.startswith("panel") else joist(chance, kind)
            rows.append({"id": f"FE{len(rows) + 1:03}", "kind": kind, **row})
    return rows


def joist(chance: random.Random, kind: str) -> dict:
    """A joist: span 14 to 22 times the depth, to the quarter inch."""
    width, depth = chance.choice(SECTIONS)
    row = {"width_in": width, "depth_in": depth, "modulus_psi": modulus(chance)}
    row["span_in"] = round(chance.uniform(14, 22) * depth * 4) / 4
    if "point" in kind:
        row["point_lb"] = float(chance.randrange(150, 650, 10))
        row["point_at_in"] = row["span_in"] / 2 if "mid" in kind else round(row["span_in"] * chance.uniform(0.1, 0.45) * 4) / 4
        return row
    row |= {"spacing_in": chance.choice(SPACINGS), "load_psf": float(chance.randrange(30, 75, 5))}
    if kind.startswith("overhang"):
        row["overhang_in"] = chance.randrange(24, 97) / 4
    if "sister" in kind:
        row["sister_width_in"], row["sister_depth_in"] = chance.choice(SECTIONS)
        row["sister_modulus_psi"] = modulus(chance)
    return row


def panel(chance: random.Random) -> dict:
    """A sheet over joists: its stiffness to the thousand lbf-in2 a foot of width."""
    thickness, spacing = chance.choice(SHEETS), chance.choice(SPACINGS)
    stiffness = round(thickness**3 * chance.uniform(0.5e6, 1.6e6), -3)
    return {
        "spacing_in": spacing,
        "span_in": spacing - PANEL_BEARING,
        "load_psf": float(chance.randrange(40, 105, 5)),
        "sheet_thickness_in": thickness,
        "sheet_stiffness_lbf_in2_per_ft": stiffness,
    }


def modulus(chance: random.Random) -> float:
    """A modulus of elasticity, psi, as the lumber tables print them."""
    return float(chance.randrange(900_000, 2_000_000, 100_000))


def beam(row: dict) -> Beam:
    """The beam that a row describes."""
    kind, span = row["kind"], row["span_in"]
    members = (sheet(row) if kind.startswith("panel") else Member(row["width_in"], row["depth_in"], row["modulus_psi"]),)
    if "sister" in kind:
        members += (Member(row["sister_width_in"], row["sister_depth_in"], row["sister_modulus_psi"]),)
    if "point" in kind:
        at, force = row["point_at_in"], row["point_lb"]
        places = {at, span - at}
        return Beam(span, members, (0.0, span), points=tuple((x, force) for x in sorted(places)))
    breadth = 12.0 if kind.startswith("panel") else row["spacing_in"]
    line = row["load_psf"] * breadth / 144
    supports, loaded = layout(kind, span)
    if kind.startswith("overhang"):
        end = span + row["overhang_in"]
        return Beam(end, members, supports, uniform=((span, end, line),))
    return Beam(supports[-1], members, supports, uniform=tuple((supports[i], supports[i + 1], line) for i in loaded))


def layout(kind: str, span: float) -> tuple[tuple[float, ...], tuple[int, ...]]:
    """Where the supports stand, and which bays between them are loaded."""
    if kind.startswith("mid-span support"):
        return (0.0, span / 2, span), ((0,) if "one bay" in kind else (0, 1))
    bays = 3 if "three" in kind else 2 if "two spans" in kind else 1
    loaded = {"two spans, one loaded": (0,), "three spans, outer two loaded": (0, 2)}.get(kind, tuple(range(bays)))
    return tuple(span * i for i in range(bays + 1)), loaded


def sheet(row: dict) -> Member:
    """A strip of sheet one foot wide: its modulus is its stiffness over t^3."""
    thickness = row["sheet_thickness_in"]
    return Member(12.0, thickness, row["sheet_stiffness_lbf_in2_per_ft"] / thickness**3)
