# shellcheck shell=sh
# tally.sh - read by the runners: counting, and the last line that tests/tools/run-all adds up.

passed=0
failed=0

pass() {
    passed=$((passed + 1))
}

# fail WHAT...: says it at once.
fail() {
    failed=$((failed + 1))
    echo "FAILED $*"
}

# A file's first lines, set in.
show() {
    sed -e 's/^/    /' -e 30q "$1"
}

# The last line of a runner, and its exit status. Nothing run is a failure.
finish() {
    if [ $((passed + failed)) -eq 0 ]; then
        fail "$1: nothing was run"
    fi
    echo "$1: $passed passed, $failed failed"
    [ "$failed" -eq 0 ]
}
