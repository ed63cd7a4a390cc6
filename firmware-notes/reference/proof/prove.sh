#!/bin/sh
# Proves the core and prints "N of M proved" for each part and, in the last line, for all. Lists what is not proved; README.md says why.
#   ceiling.mlw  Why3: the arithmetic of the ceiling, for any number of values
#   lemmas       Frama-C's WP: the facts about products, shares, sums and divisions that the contracts use
#   wp           Frama-C's WP: the contracts of the core's headers, and that nothing in those files reaches a run-time error
#   eva          Frama-C's Eva, from any.c: whatever bytes come, in the whole core
# Usage: prove.sh, from anywhere; PROVERS=1 prove.sh for one goal at a time. Needs frama-c-base, why3, cvc4 and z3.
set -e
cd "$(dirname "$0")"
for tool in frama-c why3 cvc4 z3; do
    command -v $tool >/dev/null || { echo "proof: $tool is missing (Debian: apt install frama-c-base why3 cvc4 z3)" >&2; exit 1; }
done
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
export WHY3CONFIG="$work/why3.conf"
why3 config detect >/dev/null 2>&1
# CVC4 proves by induction only if asked to; and sums of products are often easier for both provers if they do not look into the products.
prover() { # NAME VERSION DRIVER ALTERNATIVE COMMAND
    printf '\n[prover]\nname = "%s"\nversion = "%s"\ndriver = "%s"\nalternative = "%s"\ncommand = "%s"\neditor = ""\nin_place = false\n' \
        "$1" "$2" "$3" "$4" "$5" >>"$WHY3CONFIG"
    printf 'shortcut = "%s-%s"\ninteractive = false\n' "$(echo "$1" | tr A-Z a-z)" "$4" >>"$WHY3CONFIG"
}
version() { # NAME
    sed -n "/^name = \"$1\"/,/^version/s/^version = \"\(.*\)\"/\1/p" "$WHY3CONFIG" | head -1
}
prover CVC4 "$(version CVC4)" cvc4_17 induction 'cvc4 --tlimit=%t000 --lang=smt2 --quant-ind %f'
prover CVC4 "$(version CVC4)" cvc4_17 linear 'cvc4 --tlimit=%t000 --lang=smt2 --no-nl-ext %f'
prover Z3 "$(version Z3)" z3_471_nobv linear 'z3 -smt2 -T:%t smt.arith.nl=false smt.random_seed=42 %f'
proved=0
total=0
core=../core
# 32-bit integers, as the RP2040 has them.
frama="frama-c -machdep gcc_x86_32 -cpp-extra-args=-I$core"

tell() { # NAME PROVED TOTAL
    proved=$((proved + $2))
    total=$((total + $3))
    echo "$1: $2 of $3 proved"
}

prove_arithmetic() {
    why3 prove -P z3 -t 30 -a split_vc ceiling.mlw >"$work/why3" || true
    tell "ceiling.mlw (Why3)" "$(grep -c 'result is: Valid' "$work/why3")" "$(grep -c 'result is: ' "$work/why3")"
}

prove() { # NAME ARGUMENT...
    name=$1
    shift
    $frama -wp "$@" -wp-timeout 90 -wp-par "${PROVERS:-2}" >"$work/wp" 2>&1 || { tail -5 "$work/wp"; exit 1; }
    set -- $(sed -n 's/.*Proved goals: *\([0-9]*\) *\/ *\([0-9]*\).*/\1 \2/p' "$work/wp")
    tell "$name (WP)" "$1" "$2"
    sed -n 's/^\[wp\] \[\(Failed\|Timeout\|Unknown\|Stepout\)\] Goal typed_\(.*\)/  not proved: \2/p' "$work/wp"
}

prove_lemmas() {
    prove lemmas -wp-prop=@lemma -wp-prover cvc4-induction,cvc4,z3,cvc4-linear,z3-linear $core/clamp.c
}

prove_code() { # FILE [OPTION...]
    file=$1
    shift
    prove "$file.c" -wp-rte "$@" -wp-prop=-@lemma -wp-prover cvc4-linear,z3-linear,cvc4,z3 "$core/$file.c"
}

# An alarm is something that Eva alone cannot rule out: it knows ranges, but not how two numbers are related. Alarms in a function whose
# accesses WP has all proved count as proved; the others do not.
prove_all_bytes() {
    $frama -cpp-extra-args=-I. -eva any.c $core/*.c -eva-precision 0 -eva-no-show-progress >"$work/eva" 2>&1 || { tail -5 "$work/eva"; exit 1; }
    grep -q 'functions analyzed' "$work/eva"
    sed -n 's/^ *\([0-9]* functions analyzed.*\)/any bytes (Eva): \1/p; s/^ *In these functions, \(.*\)/  \1/p' "$work/eva"
    awk '
        function tell() { if (words ~ /assert /) { sub(/.*assert /, "", words); print place ": " words } words = "" }
        /^\[/ { tell(); place = "" }
        /^\[eva:alarm\]/ { place = $2; sub(/.*\//, "", place); sub(/:$/, "", place) }
        /^ / && place != "" { sub(/^ +/, ""); words = words " " $0 }
        END { tell() }' "$work/eva" >"$work/alarms"
    sed -n 's/^  \([0-9]*\) alarms\{0,1\} generated.*/\1/p' "$work/eva" >"$work/count"
    alarms=$(cat "$work/count")
    by_wp=$(grep '^\(packet\|parts\|frame\|setup\|budget\|clamp\|answer\)\.' "$work/alarms" | grep -vc initialized || true)
    echo "  $alarms alarms, of which $by_wp are in what WP proves; the others:"
    grep 'initialized\|^\(controller\|light\)\.' "$work/alarms" | sed 's/^/  not proved: /'
    total=$((total + alarms - by_wp))
}

prove_arithmetic
prove_lemmas
prove_code number
prove_code packet
prove_code frame
prove_code parts
prove_code setup
prove_code budget -warn-unsigned-overflow
prove_code clamp -warn-unsigned-overflow
prove_code answer
prove_all_bytes
echo "$proved of $total proved"
