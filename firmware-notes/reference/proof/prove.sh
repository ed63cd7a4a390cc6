#!/bin/sh
# What is proved of the core: "N of M proved" for each part and, in the last line, for all. What is not is listed; README.md says why.
#   ceiling.mlw  Why3: the arithmetic of the ceiling, for any number of values
#   lemmas       Frama-C's WP: what the contracts use of divisions
#   wp           Frama-C's WP: the contracts of the core's headers, and that nothing in those files reaches a run-time error
#   eva          Frama-C's Eva, from any.c: whatever bytes come, in the whole core
# Usage: prove.sh, from anywhere. Needs frama-c-base, why3, cvc4 and z3.
set -e
cd "$(dirname "$0")"
for tool in frama-c why3 cvc4 z3; do
    command -v $tool >/dev/null || { echo "proof: $tool is missing (Debian: apt install frama-c-base why3 cvc4 z3)" >&2; exit 1; }
done
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
export WHY3CONFIG="$work/why3.conf"
why3 config detect >/dev/null 2>&1
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
    $frama -wp "$@" -wp-timeout 10 -wp-par 2 >"$work/wp" 2>&1 || { tail -5 "$work/wp"; exit 1; }
    set -- $(sed -n 's/.*Proved goals: *\([0-9]*\) *\/ *\([0-9]*\).*/\1 \2/p' "$work/wp")
    tell "$name (WP)" "$1" "$2"
    sed -n 's/^\[wp\] \[\(Failed\|Timeout\|Unknown\|Stepout\)\] Goal typed_\(.*\)/  not proved: \2/p' "$work/wp"
}

prove_lemmas() {
    prove lemmas -wp-prop=@lemma -wp-prover cvc4,z3,z3-nobv $core/*.c
}

prove_code() { # FILE FUNCTIONS [OPTION...]
    file=$1
    functions=$2
    shift 2
    prove "$file.c" -wp-rte "$@" -wp-prover cvc4,z3,z3-nobv -wp-fct "$functions" "$core/$file.c"
}

# An alarm is what Eva cannot rule out by itself, since it knows ranges and not how two numbers hang together. Those in a function whose every
# access WP has proved are proved; the others count as not proved.
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
    by_wp=$(grep '^\(packet\|parts\|frame\|clamp\)\.' "$work/alarms" | grep -vc initialized || true)
    echo "  $alarms alarms, of which $by_wp are in what WP proves; the others:"
    grep 'initialized\|^\(answer\|controller\|light\|setup\|budget\)\.' "$work/alarms" | sed 's/^/  not proved: /'
    total=$((total + alarms - by_wp))
}

prove_arithmetic
prove_lemmas
prove_code number number_read,number_write
prove_code packet packet_start,packet_take,packet_under_way,packet_spoil,count_up,checksum_right,judge,take_end,hold,take_type,take_sequence,take_early,take_body,cobs_take,cobs_complete,crc_next
prove_code frame frame_clear,frame_open,frame_room,frame_sum,frame_put,add
prove_code parts parts_forget,parts_begin,parts_take,parts_end,head_good,read_fixed,open_frame,take_head,take_data,refusal,length_good,complain
prove_code clamp product,dark_uA,ceiling_uA,strip_load,dimmer_load,dimmers_load,load_of,dim,dim_supply,clamp_supply,clamp_frame -warn-unsigned-overflow
prove_all_bytes
echo "$proved of $total proved"
