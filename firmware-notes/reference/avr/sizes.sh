#!/bin/sh
# Builds the firmware for every baud of README.md's table and prints flash and RAM in bytes. RAM is what is always in use; the
# stack comes on top. Usage: sizes.sh, from anywhere.
set -e
cd "$(dirname "$0")"
echo "baud flash ram stack_left"
for baud in 9600 57600 115200 250000 500000 1000000; do
    make -s BAUD=$baud elf >/dev/null
    avr-size "${BUILD:-../../build}/avr-$baud/lampwright.elf" |
        awk -v baud=$baud 'NR == 2 { print baud, $1 + $2, $2 + $3, 2048 - $2 - $3 }'
done
