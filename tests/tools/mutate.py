#!/usr/bin/env python3
"""Does every sign and factor of the checks and loads matter to the tests?

    mutate.py SCRATCH [--count N] [--seed S] [--list] [--only PLACE]

Copies the tree to SCRATCH, then for N places (80 where not said, spread evenly over all of src/check,
src/loads and src/weather, from place S on) changes one sign or drops one factor, builds, and runs the
unit tests, the published cases and the whole-program cases until one is red. What stays green is a
survivor: it needs a test, or a line in tests/mutants-left with the reason why nobody can see it.
PLACE is the only folder, file or line to look at: src/check, src/check/bend.c, src/check/bend.c:106.
Ends with 1 where a survivor is not listed there.
"""
import argparse, filecmp, os, re, shutil, subprocess, sys

FOLDERS = ["check", "loads", "weather"]
SKIP = re.compile(r'^\s*(#|//|/\*|\*|for \(|static const|enum|struct|return NULL)|"|\bsizeof\b|size_t|\bint \b|ARENA|\+\+|--|->count|%|1e-')
OPERAND = re.compile(r"-?[A-Za-z_0-9.]+(?:(?:->|\.)[A-Za-z_0-9]+)*")


def operand_end(line, start):
    """Where the operand that starts at `start` ends: a name, number, call, index or parenthesis."""
    at = start
    if line[at] != "(":
        match = OPERAND.match(line, at)
        if not match:
            return None
        at = match.end()
    while at < len(line) and line[at] in "([":
        depth, opened = 0, at
        while at < len(line):
            depth += line[at] in "(["
            depth -= line[at] in ")]"
            at += 1
            if depth == 0:
                break
        if depth or at == opened:
            return None
    return at


def changes(line):
    """(what, changed line) for each sign or factor of a line."""
    if SKIP.search(line):
        return
    for match in re.finditer(r" ([-+*/]) (?=[A-Za-z_0-9(.])", line):
        sign, at = match.group(1), match.start()
        if line.count("[", 0, at) > line.count("]", 0, at):
            continue  # an index
        if sign in "+-":
            other = "-" if sign == "+" else "+"
            yield f"{sign} to {other}", line[:at] + f" {other} " + line[match.end():]
        else:
            end = operand_end(line, match.end())
            if end:
                yield f"without{line[at:end]}", line[:at] + line[end:]
    for one, other in (("fmax(", "fmin("), ("fmin(", "fmax(")):
        at = line.find(one)
        if at >= 0:
            yield f"{one} to {other}", line[:at] + other + line[at + len(one):]
    match = re.search(r"(?:return|=|,|\() ?-(?=[a-z])", line)
    if match:
        yield "without its minus", line[: match.end() - 1] + line[match.end():]


def places(root):
    for folder in FOLDERS:
        path = os.path.join(root, "src", folder)
        for name in sorted(os.listdir(path)):
            if name.endswith(".c"):
                lines = open(os.path.join(path, name)).read().split("\n")
                for number, line in enumerate(lines):
                    for what, changed in changes(line):
                        yield f"src/{folder}/{name}", number, what, changed


def named(place, only):
    file, number = place[0], place[1] + 1
    return not only or only == f"{file}:{number}" or f"{file}/".startswith(only.rstrip("/") + "/")


def copy_changed(source, target):
    """With a new time where it differs, so that make sees it; left alone where it does not."""
    if not os.path.exists(target) or not filecmp.cmp(source, target, shallow=False):
        shutil.copy(source, target)


def run(command, scratch, seconds=900):
    try:
        return subprocess.run(command, cwd=scratch, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE,
                              stderr=subprocess.STDOUT, timeout=seconds, text=True, errors="replace")
    except subprocess.TimeoutExpired:
        return None  # hangs: seen


def build(scratch):
    return run(["make", "-j2", "build/batten", "build/unit-tests", "build/json_compare"], scratch)


def red(scratch):
    """The first test that sees it; None where all are green."""
    for name, command in (
        ("published cases", ["tests/tools/run-published", "build/batten", "build/json_compare", "build/p"]),
        ("whole-program cases", ["tests/tools/run-cases", "build/batten", "build/json_compare", "build/c"]),
        ("unit tests", ["build/unit-tests", "--fail-fast", "--timeout", "120"]),
    ):
        result = run(command, scratch)
        if result is None or result.returncode:
            return name
    return None


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("scratch")
    parser.add_argument("--count", type=int, default=80)
    parser.add_argument("--seed", type=int, default=0)
    parser.add_argument("--list", action="store_true")
    parser.add_argument("--only")
    options = parser.parse_args()
    root = os.path.realpath(os.path.join(os.path.dirname(__file__), "..", ".."))
    everything = [place for place in places(root) if named(place, options.only)]
    step = max(1, len(everything) // options.count)
    chosen = everything[options.seed % step::step][: options.count]
    print(f"{len(everything)} places, {len(chosen)} tried", flush=True)
    if options.list:
        for file, number, what, changed in chosen:
            print(f"{file}:{number + 1}: {what}: {changed.strip()}")
        return 0

    left = {}
    for line in open(os.path.join(root, "tests", "mutants-left")):
        if line.strip() and not line.startswith("#"):
            where, reason = line.rstrip("\n").split("\t", 1)
            left[where] = reason
    scratch = os.path.realpath(options.scratch)
    os.makedirs(scratch, exist_ok=True)
    for entry in os.listdir(root):
        if entry in (".git", "build"):
            continue
        target = os.path.join(scratch, entry)
        if os.path.isdir(os.path.join(root, entry)):
            shutil.copytree(os.path.join(root, entry), target, dirs_exist_ok=True, copy_function=copy_changed)
        else:
            copy_changed(os.path.join(root, entry), target)
    first = build(scratch)
    if not first or first.returncode:
        print(first.stdout if first else "the build hangs")
        return 2
    seen_by = red(scratch)
    if seen_by:
        print(f"the tree itself is red: {seen_by}")
        return 2

    survivors = caught = invalid = 0
    for file, number, what, changed in chosen:
        path = os.path.join(scratch, file)
        original = open(path).read()
        lines = original.split("\n")
        text = lines[number].strip()
        lines[number] = changed
        with open(path, "w") as out:
            out.write("\n".join(lines))
        result = build(scratch)
        if not result or result.returncode:
            invalid += 1
        else:
            seen_by = red(scratch)
            where = f"{file}: {what}: {text}"
            if seen_by:
                caught += 1
                print(f"seen by {seen_by}: {where}", flush=True)
            elif where in left:
                print(f"left, {left[where]}: {where}", flush=True)
            else:
                survivors += 1
                print(f"SURVIVED {file}:{number + 1}: {what}: {text}", flush=True)
        with open(path, "w") as out:
            out.write(original)
    print(f"mutants: {caught} seen, {survivors} survived, {invalid} do not compile")
    return 1 if survivors or not caught else 0


sys.exit(main())
