#!/bin/sh
# Sums the lines of a log that say "N passed, M failed"; fails where anything did. Usage: sum.sh LOG
awk '
    match($0, /[0-9]+ passed, [0-9]+ failed/) {
        split(substr($0, RSTART, RLENGTH), word, " ")
        passed += word[1]
        failed += word[3]
    }
    END {
        print passed + 0 " passed, " failed + 0 " failed"
        exit failed > 0 || passed == 0
    }
' "$1"
