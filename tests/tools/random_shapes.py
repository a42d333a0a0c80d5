#!/usr/bin/env python3
"""Seeded random shapes: what `expand` prints checks to the same ids, verdicts and (to 1e-9) ratios.

    random_shapes.py BATTEN SCRATCH [COUNT]

All kinds and keys, us and si, with and without weather. A shape that is refused must be refused in its
own words; the last line counts them.
"""
import json, os, random, subprocess, sys

KINDS = ["stand", "lean-to", "gable", "bench", "cold-frame"]
HEAD = """batten: 1
title: Random shape
units: {units}
sticks:
  post: {{size: 2x2, species: spruce-pine-fir, grade: no-2}}
  rail: {{size: 1x3, species: spruce-pine-fir, grade: no-2}}
  slat: {{size: 1x2, species: spruce-pine-fir, grade: ungraded, stands: flat}}
connections:
  default: {{type: screwed-lap, screw: 8, length: 2 in, count: 2}}
shape:
"""
WEATHER = ["", ", ground-snow: 20 psf", ", wind: 90 mph", ", ground-snow: 20 psf, wind: 90 mph"]


def shelves(pick, high, length):
    heights = range(6, high - 18, 8)
    chosen = sorted(pick.sample(heights, min(2, len(heights))))
    return "{" + ", ".join(f"s{k}: {length(at)}" for k, at in enumerate(chosen)) + "}"


def covers(pick, kind):
    some = [f"{face}: {pick.choice(['screwed', 'screwed', 'hinged'])}"
            for face in ("front", "left", "right") if pick.random() < 0.5]
    if kind == "lean-to" and pick.random() < 0.6:
        some.append("roof: screwed")
    if kind == "gable" and pick.random() < 0.6:
        some += ["roof-front: screwed", "roof-back: screwed"]
    return some


def shape(pick):
    kind, si = pick.choice(KINDS), pick.random() < 0.4
    length = (lambda inch: round(inch * 25.4)) if si else (lambda inch: inch)
    high = pick.randint(14, 30) if kind == "cold-frame" else pick.randint(30, 76)
    load = "{load: 0.4}" if si else "{load: 8}"
    keys = {"kind": kind, "wide": length(pick.randint(24, 96)), "deep": length(pick.randint(16, 40)),
            "high": length(high)}
    if kind in ("lean-to", "cold-frame"):
        keys["front-high"] = length(high - pick.randint(2, 6))
    if kind == "gable":
        keys["eave-high"] = length(high - pick.randint(5, 12))
        if pick.random() < 0.4:
            keys["frames"] = pick.randint(2, 4)
    if kind in ("stand", "lean-to", "gable") and pick.random() < 0.8:
        keys["shelves"] = shelves(pick, high, length)
        if pick.random() < 0.7:
            keys["deck"] = f"{{slats: slat, count: {pick.randint(4, 12)}}}"
        if pick.random() < 0.7:
            keys["trays"] = load
    if kind == "bench":
        keys["trays"] = load
        if pick.random() < 0.5:
            keys["under"] = length(10)
        if pick.random() < 0.5:
            keys["back-rail"] = length(6)
    if pick.random() < 0.3:
        keys["measured"] = "axes"
    if pick.random() < 0.3 and kind != "gable":
        keys["middle-posts"] = pick.randint(1, 2)
    if pick.random() < 0.3 and kind != "cold-frame":
        keys["rails-across"] = pick.randint(2, 3)
    if pick.random() < 0.3:
        keys["bottom-rails"] = length(3)
    braces = [f"{face}: {pick.choice(['1', 'all', 'long', 'x', 'tie'])}"
              for face in ("back", "left", "right", "front") if pick.random() < 0.5]
    if braces and kind != "cold-frame":
        keys["braces"] = "{" + ", ".join(braces) + "}"
    some = covers(pick, kind)
    if some:
        keys["covers"], keys["sheet"] = "{" + ", ".join(some) + "}", "twin-wall-6mm"
    if kind == "cold-frame":
        keys["sheet"] = "twin-wall-6mm"
        if pick.random() < 0.5:
            keys["lid"] = "{framed: rail, opens: 40 deg}"
    keys["feet"] = pick.choice(["{on: paving}", "{on: soil, hold-down: 60 lb}"])
    text = HEAD.format(units="si" if si else "us")
    text += "".join(f"  {key}: {value}\n" for key, value in keys.items())
    return text + f"site: {{place: outdoors{pick.choice(WEATHER)}}}\n"


def run(batten, *words, text=None):
    return subprocess.run([batten, *words], input=text, capture_output=True, text=True)


def differs(batten, path):
    """What is wrong; None where nothing is; "refused" where the shape is."""
    made = run(batten, "check", path, "--json")
    if made.returncode == 2:
        return "refused" if "shape." in made.stderr or "shelf" in made.stderr else f"refused: {made.stderr}"
    full = run(batten, "expand", path)
    again = run(batten, "check", "-", "--json", text=full.stdout)
    if made.returncode != again.returncode or made.returncode not in (0, 1, 3):
        return f"ends with {made.returncode}, expanded with {again.returncode}: {again.stderr[:200]}"
    one, other = ({check["id"]: check for check in json.loads(answer.stdout)["checks"]}
                  for answer in (made, again))
    if one.keys() != other.keys():
        return f"ids: {sorted(one.keys() ^ other.keys())[:5]}"
    for name in one:
        a, b = one[name]["ratio"], other[name]["ratio"]
        if one[name]["verdict"] != other[name]["verdict"] or (a is None) != (b is None):
            return f"{name}: {one[name]['verdict']}, expanded {other[name]['verdict']}"
        if a is not None and abs(a - b) > 1e-9 * max(1.0, abs(a)):
            return f"{name}: {a} and {b}"
    return None


def main():
    batten, scratch = os.path.realpath(sys.argv[1]), sys.argv[2]
    count = int(sys.argv[3]) if len(sys.argv) > 3 else 250
    os.makedirs(scratch, exist_ok=True)
    pick = random.Random(7)
    failed = refused = 0
    for number in range(count):
        path = os.path.join(scratch, f"{number}.yaml")
        with open(path, "w") as out:
            out.write(shape(pick))
        wrong = differs(batten, path)
        if wrong == "refused":
            refused += 1
        elif wrong:
            failed += 1
            print(f"FAILED {path}: {wrong}")
    # Hardly any may be refused, or nothing is tested.
    failed += refused > count // 5
    print(f"random shapes: {count - failed - refused} passed, {failed} failed ({refused} refused)")
    return 1 if failed else 0


sys.exit(main())
