#!/usr/bin/env python3
"""Write everything that a build of the program prints, and a digest of each.

    go build -o old ./cmd/underfoot             # before a change
    python3 testdata/digests.py old OUT/old
    go build -o new ./cmd/underfoot             # after it
    python3 testdata/digests.py new OUT/new
    diff -rq OUT/old OUT/new                    # what the change did to readers

Every case, region's floor and the demo as JSON, text, page and workbook, the
first in every region; the rule book and each rule; joists; refusals. It takes
some minutes; any third argument keeps it to every fifth case and three regions.
"""
import concurrent.futures
import glob
import hashlib
import os
import re
import shutil
import subprocess
import sys
import zipfile

PROGRAM, OUT = os.path.abspath(sys.argv[1]), os.path.abspath(sys.argv[2])
FEW = len(sys.argv) > 3
REPO = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
DAY = ["--today", "2026-05-04"]
ENV = dict(os.environ, NO_COLOR="1", TERM="dumb")
REGIONS = ["us", "uk", "de"] if FEW else "us ca uk ie au nz de eu other".split()
DEMO = REPO + "/cmd/internal/cli/demo.yaml"
JOISTS = [
    "--size 2x10 --species hem-fir --grade no2 --spacing 16in --span 14ft",
    "--size 2x8 --spacing 16in --span 13ft --tile natural-stone",
    "--size 47x220mm --grade c24 --spacing 400mm --span 3,8m --units mm --region uk",
    "--size 2x8 --spacing 16in --span 12ft --test-weight 200lb --test-drop 0.06in --test-with dial-gauge",
    "--size 2x12 --spacing 24in --span 15ft --overhang 2ft",
    "--size 2x6 --spacing 12in --span 8ft --wet --incised --continuity two-spans",
    "--member i-joist --size 2x10 --spacing 16in --span 14ft",
    "--size 9x9x9",
    "--spacing 16",
]
REFUSED = ["joist.spacing=16' OC", "nope=1", "layer.l1.kind=xx", "zone.base=joist", "joist.span=14", "joist.span.basis=bad"]


def records():
    """The records, and whether each is judged in every region as text too."""
    cases = sorted(glob.glob(REPO + "/testdata/cases/*.yaml"))
    floors = sorted(glob.glob(REPO + "/testdata/regions/*.yaml")) + [DEMO]
    return [(r, False) for r in cases[::5 if FEW else 1]] + [(r, True) for r in floors]


def runs():
    for record, everywhere in records():
        name = os.path.basename(record)[:-5]
        yield name + ".json", ["assess", "--json", "--all", record] + DAY
        yield name + ".txt", ["assess", record] + DAY
        yield name + ".all.txt", ["assess", "--all", record] + DAY
        yield name + ".mm.txt", ["assess", "--all", "--units", "mm", record] + DAY
        yield name + ".html", ["report", record, "-o", "@"] + DAY
        yield name + ".xlsx", ["report", record, "-o", "@"] + DAY
        for region in REGIONS:
            yield f"{name}.{region}.json", ["assess", "--json", "--all", "--region", region, record] + DAY
            if everywhere:
                yield f"{name}.{region}.txt", ["assess", "--all", "--region", region, record] + DAY
    yield "book.html", ["rules", "book", "-o", "@"]
    yield "book.md", ["rules", "book", "-o", "@"]
    yield "rules.list", ["rules", "list"]
    yield "rules.test", ["rules", "test"]
    yield "schema.json", ["schema"]
    yield "compare.txt", ["compare", REPO + "/testdata/cases/P01.yaml", DEMO]
    listed = subprocess.run([PROGRAM, "rules", "list"], capture_output=True, text=True, env=ENV).stdout
    for rule in re.findall(r"^[a-z0-9-]+(?=\s)", listed, re.M):
        yield "show." + rule, ["rules", "show", rule]
    for i, joist in enumerate(JOISTS):
        yield f"joist-{i}.txt", ["joist"] + joist.split()
        yield f"joist-{i}.json", ["joist", "--json"] + joist.split()
    for i, answer in enumerate(REFUSED):
        copy = f"{OUT}/files/set-{i}.yaml"
        shutil.copy(REPO + "/testdata/cases/P01.yaml", copy)
        yield f"set-{i}.err", ["set", copy, answer]
    for record in sorted(glob.glob(REPO + "/assess/record/testdata/broken/*")):
        yield "broken." + os.path.basename(record), ["assess", record]


def cells(path):
    """A workbook as its parts, each cell on a line of its own."""
    out = b""
    with zipfile.ZipFile(path) as book:
        for part in sorted(book.namelist()):
            out += b"\n== " + part.encode() + b"\n" + re.sub(rb"(<(?:row|c|si|sheet|col|f)[ >])", rb"\n\1", book.read(part))
    return out


def run(job):
    name, arguments = job
    file = f"{OUT}/files/{name}.out{os.path.splitext(name)[1]}"
    done = subprocess.run([PROGRAM] + [file if a == "@" else a for a in arguments], capture_output=True, env=ENV, stdin=subprocess.DEVNULL)
    data = done.stdout + b"\n== stderr\n" + done.stderr + b"\n== exit %d\n" % done.returncode
    if os.path.exists(file):
        data += cells(file) if file.endswith(".xlsx") else open(file, "rb").read()
    data = data.replace(REPO.encode(), b"REPO").replace(OUT.encode(), b"OUT")
    with open(f"{OUT}/{name}", "wb") as f:
        f.write(data)
    return f"{hashlib.sha256(data).hexdigest()[:16]} {name}\n"


os.makedirs(OUT + "/files", exist_ok=True)
with concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as pool:
    lines = sorted(pool.map(run, list(runs())), key=lambda l: l.split()[1])
shutil.rmtree(OUT + "/files")
with open(OUT + "/DIGESTS", "w") as f:
    f.writelines(lines)
print(len(lines), "outputs, together", hashlib.sha256("".join(lines).encode()).hexdigest()[:16])
