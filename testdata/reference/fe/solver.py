"""A beam as a CalculiX model: its input deck, the run, the deflection read back.

CalculiX expands each line element into a solid of the section's true
width and depth, so that the second moment of area comes out of the mesh and
not out of a formula. The material is stiff across the beam and in shear:
plane sections stay plane and square to the axis, which is the assumption
under which published moduli of sawn lumber are stated (they carry the shear
deflection of the test beam already).
"""

import dataclasses
import math
import os
import pathlib
import re
import subprocess
import tempfile

# How many times stiffer the material is across the beam and in shear than
# along it. The shear deflection left is about one part in a million.
ACROSS = 1e4

SOLVER = "CalculiX ccx"


@dataclasses.dataclass(frozen=True)
class Member:
    """A rectangular piece: width and depth in inches, modulus in psi."""

    width: float
    depth: float
    modulus: float


@dataclasses.dataclass(frozen=True)
class Beam:
    """Members side by side that bend as one, on supports that do not move.

    Lengths are inches from the left end. Uniform loads are (from, to, lb/in),
    point loads (at, lb); both act downwards and rest on the first member.
    """

    length: float
    members: tuple[Member, ...]
    supports: tuple[float, ...]
    uniform: tuple[tuple[float, float, float], ...] = ()
    points: tuple[tuple[float, float], ...] = ()


def version() -> str:
    """The version that the installed solver prints."""
    out = subprocess.run(["ccx", "-v"], capture_output=True, text=True, check=False).stdout
    return re.search(r"Version\s+(\S+)", out).group(1)


def solve(beam: Beam, per_bay: int) -> tuple[float, int]:
    """The largest downward deflection, in inches, and the number of elements.

    per_bay is how many quadratic elements the shortest bay gets.
    """
    xs = stations(beam, per_bay)
    with tempfile.TemporaryDirectory() as folder:
        job = pathlib.Path(folder, "beam")
        job.with_suffix(".inp").write_text(deck(beam, xs), encoding="ascii")
        one_thread = os.environ | {"OMP_NUM_THREADS": "1"}  # the same order of sums, the same last digit
        subprocess.run(["ccx", job.name], cwd=folder, env=one_thread, capture_output=True, check=True)
        sag = [-row[3] for row in rows(job.with_suffix(".dat").read_text(encoding="ascii"))]
    return largest(sag[: len(xs)]), len(xs) // 2 * len(beam.members)


def stations(beam: Beam, per_bay: int) -> list[float]:
    """Where the nodes lie: two to an element, one wherever something happens."""
    marks = {0.0, beam.length, *beam.supports, *(at for at, _ in beam.points)}
    marks |= {end for piece in beam.uniform for end in piece[:2]}
    marks = sorted(marks)
    bays = [b - a for a, b in zip(beam.supports, beam.supports[1:])]
    size = min(bays) / per_bay
    xs = [0.0]
    for a, b in zip(marks, marks[1:]):
        steps = 2 * math.ceil((b - a) / size - 1e-9)
        xs += [a + (b - a) * i / steps for i in range(1, steps + 1)]
    return xs


def deck(beam: Beam, xs: list[float]) -> str:
    """The solver's input."""
    lines = ["*NODE,NSET=ALL"]
    for m, member in enumerate(beam.members):
        lines += [f"{node(xs, m, i)},{x!r},{m * member.width!r},0." for i, x in enumerate(xs)]
    for m, member in enumerate(beam.members):
        lines += member_lines(m, member, xs)
    lines += ties(beam, xs) + ["*BOUNDARY"]
    for m in range(len(beam.members)):
        for at in beam.supports:
            first = 1 if at == beam.supports[0] else 2
            lines.append(f"{node(xs, m, xs.index(at))},{first},4")
    lines += ["*STEP", "*STATIC", *loads(beam, xs), "*NODE PRINT,NSET=ALL", "U", "*END STEP"]
    return "\n".join(lines) + "\n"


def node(xs: list[float], member: int, i: int) -> int:
    """The number of the node of a member at a station."""
    return member * len(xs) + i + 1


def element(xs: list[float], member: int, i: int) -> int:
    """The number of the element of a member that begins at station i."""
    return member * (len(xs) // 2) + i // 2 + 1


def member_lines(m: int, member: Member, xs: list[float]) -> list[str]:
    """Elements, material and section of one member."""
    along, across = member.modulus, ACROSS * member.modulus
    lines = [f"*ELEMENT,TYPE=B32R,ELSET=MEMBER{m}"]
    for i in range(0, len(xs) - 1, 2):
        lines.append(f"{element(xs, m, i)}," + ",".join(str(node(xs, m, i + k)) for k in range(3)))
    return lines + [
        f"*MATERIAL,NAME=WOOD{m}",
        "*ELASTIC,TYPE=ENGINEERING CONSTANTS",
        f"{along!r},{across!r},{across!r},0.,0.,0.,{across!r},{across!r}",
        f"{across!r}",
        f"*BEAM SECTION,ELSET=MEMBER{m},MATERIAL=WOOD{m},SECTION=RECT",
        f"{member.width!r},{member.depth!r}",
        "0.,1.,0.",
    ]


def ties(beam: Beam, xs: list[float]) -> list[str]:
    """Members go down together at every node; nothing else passes between them."""
    lines = []
    for m in range(1, len(beam.members)):
        for i, x in enumerate(xs):
            if x not in beam.supports:
                lines += ["*EQUATION", "2", f"{node(xs, m, i)},3,1.,{node(xs, 0, i)},3,-1."]
    return lines


def loads(beam: Beam, xs: list[float]) -> list[str]:
    """Pressure on the top of the first member, and forces on its nodes."""
    lines = []
    for a, b, per_inch in beam.uniform:
        lines.append("*DLOAD")
        pressure = -per_inch / beam.members[0].width
        lines += [f"{element(xs, 0, i)},P2,{pressure!r}" for i in range(xs.index(a), xs.index(b), 2)]
    for at, force in beam.points:
        lines += ["*CLOAD", f"{node(xs, 0, xs.index(at))},3,{-force!r}"]
    return lines


def rows(dat: str) -> list[list[float]]:
    """The rows of numbers of the solver's table of displacements, by node."""
    return [[float(word) for word in line.split()] for line in dat.splitlines() if re.match(r"\s+\d+\s+\S+\s+\S+\s+\S+$", line)]


def largest(sag: list[float]) -> float:
    """The largest deflection within any element, whose shape is a parabola."""
    best = max(sag)
    for a, b, c in zip(sag[::2], sag[1::2], sag[2::2]):
        slope, bend = (c - a) / 2, a - 2 * b + c
        if bend < 0 and abs(slope) <= -bend:
            best = max(best, b - slope * slope / (2 * bend))
    return best
