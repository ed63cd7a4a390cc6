#!/bin/sh
# Runs test suites, two at a time, each a make target FOLDER:TARGET whose output says "N passed, M failed", and sums up: the last line says
# "N passed, M failed" over all. A suite that fails without saying so counts as one failed. Fails where anything did. What the suites print
# follows when all have ended, in the order given.
# Usage: suites.sh LOG FOLDER:TARGET...

log=$1
shift
rm -f "$log" "$log".*
number=0
for suite in "$@"; do
    number=$((number + 1))
    printf '%s\n%s\n' "$log.$number" "$suite"
done | xargs -d '\n' -n 2 -P 2 sh -c '
    make -C "${2%%:*}" "${2##*:}" >"$1" 2>&1 || echo "suite ended with status $?: $2" >>"$1"
' suite
number=0
for suite in "$@"; do
    number=$((number + 1))
    cat "$log.$number"
done | tee "$log"
awk '
    match($0, /[0-9]+ passed, [0-9]+ failed/) {
        split(substr($0, RSTART, RLENGTH), word, " ")
        passed += word[1]
        failed += word[3]
        told = told || word[3] > 0
    }
    /^suite ended with status/ {
        failed += !told
        told = 0
    }
    END {
        print passed + 0 " passed, " failed + 0 " failed"
        exit failed > 0 || passed == 0
    }
' "$log"
