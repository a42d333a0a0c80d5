#!/usr/bin/env python3
"""What a run of the tests did not reach.

    coverage.py COVERAGE.json LEFT

COVERAGE.json is gcovr's. LEFT names lines of the checks and loads that no test reaches or that have a
branch never taken: `FILE: TEXT OF THE LINE<tab>REASON`. Ends with 1 where one is not named there, or a
named one is reached after all.
"""
import collections, json, os, sys

HELD = ("src/check/", "src/loads/", "src/weather/")


def main():
    data = json.load(open(sys.argv[1]))
    left = {}
    for line in open(sys.argv[2]):
        if line.strip() and not line.startswith("#"):
            where, reason = line.rstrip("\n").split("\t", 1)
            left[where] = reason
    lines = collections.Counter()
    reached = collections.Counter()
    branches = collections.Counter()
    taken = collections.Counter()
    missing = []
    for entry in data["files"]:
        name = entry["file"]
        folder = name.rsplit("/", 1)[0]
        source = open(name).read().split("\n")
        for line in entry["lines"]:
            if line.get("gcovr/noncode"):
                continue
            lines[folder] += 1
            reached[folder] += line["count"] > 0
            branches[folder] += len(line["branches"])
            taken[folder] += sum(branch["count"] > 0 for branch in line["branches"])
            short = sum(branch["count"] == 0 for branch in line["branches"])
            if name.startswith(HELD) and (line["count"] == 0 or short):
                text = source[line["line_number"] - 1].strip()
                missing.append((name, line["line_number"], line["count"], short, text))
    for folder in sorted(lines):
        part = 100.0 * taken[folder] / branches[folder] if branches[folder] else 100.0
        print(f"{folder:16} {reached[folder]:5} of {lines[folder]:5} lines {100 * reached[folder] / lines[folder]:5.1f} %"
              f"   branches {part:5.1f} %")
    print(f"all              {sum(reached.values()):5} of {sum(lines.values()):5} lines "
          f"{100 * sum(reached.values()) / sum(lines.values()):5.1f} %")
    unnamed = 0
    seen = set()
    for name, number, count, short, text in missing:
        where = f"{name}: {text}"
        seen.add(where)
        if where not in left:
            unnamed += 1
            what = "never reached" if count == 0 else f"{short} branches never taken"
            print(f"{name}:{number}: {what}: {text}")
    for where in sorted(set(left) - seen):
        unnamed += 1
        print(f"named as left, but reached: {where}")
    print(f"{len(missing)} lines of the checks and loads not wholly reached, {unnamed} of them without a reason")
    return 1 if unnamed else 0


sys.exit(main())
