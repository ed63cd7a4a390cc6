#!/bin/sh
# Runs test suites, each a make target FOLDER:TARGET whose output says "N passed, M failed", and sums up: the last line says
# "N passed, M failed" over all. A suite that fails without saying so counts as one failed. Fails where anything did.
# Usage: suites.sh LOG FOLDER:TARGET...

log=$1
shift
: >"$log"
for suite in "$@"; do
    {
        make -C "${suite%%:*}" "${suite##*:}" || echo "suite ended with status $?: $suite"
    } 2>&1 | tee -a "$log"
done
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
