"""Writes the table of finite-element deflections to standard output."""

import csv
import sys

import cases
import solver

# Elements in the shortest bay, and how far twice as many may move a result.
PER_BAY, CONVERGED = 24, 1e-4

COLUMNS = [
    "id", "kind", "width_in", "depth_in", "modulus_psi", "sister_width_in", "sister_depth_in", "sister_modulus_psi",
    "spacing_in", "span_in", "overhang_in", "load_psf", "dead_psf", "point_lb", "point_at_in",
    "sheet_thickness_in", "sheet_stiffness_lbf_in2_per_ft",
    "second_sheet_thickness_in", "second_sheet_stiffness_lbf_in2_per_ft", "deflection_in", "solver", "version", "elements", "seed",
]  # fmt: skip


def main() -> None:
    rows, moved, version = cases.cases(), 0.0, solver.version()
    for row in rows:
        beam = cases.beam(row)
        coarse, elements = solver.solve(beam, PER_BAY)
        fine, _ = solver.solve(beam, 2 * PER_BAY)
        if abs(fine / coarse - 1) > CONVERGED:
            sys.exit(f"{row['id']}: {coarse} in with {elements} elements, {fine} in with twice as many")
        moved = max(moved, abs(fine / coarse - 1))
        row |= {"deflection_in": f"{coarse:.6g}", "solver": solver.SOLVER, "version": version, "elements": elements, "seed": cases.SEED}
    table = csv.DictWriter(sys.stdout, COLUMNS, restval="", lineterminator="\n")
    table.writeheader()
    table.writerows({name: plain(value) for name, value in row.items()} for row in rows)
    print(f"{len(rows)} cases; twice the elements move none by more than {moved:.1e}", file=sys.stderr)


def plain(value: object) -> object:
    """A whole number without its point."""
    return int(value) if isinstance(value, float) and value.is_integer() else value


if __name__ == "__main__":
    main()
