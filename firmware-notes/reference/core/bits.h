/**
 * What the provers need to know about shifts and narrow numbers; there is nothing here for the compiler. The axioms are C's own
 * (C11, 6.3.1.3 and 6.5.7) and, of two numbers that share no bit, that | adds them: WP has no laws for these.
 */
#ifndef BITS_H
#define BITS_H

#include <stdint.h>

/*@ axiomatic Bits {
        axiom byte_of: \forall integer x; 0 <= x ==> (uint8_t)x == x % 256;
        axiom wrapped_once: \forall integer x; 65536 <= x < 2 * 65536 ==> (uint16_t)x == x - 65536;
        axiom put_together: \forall integer high, low; 0 <= high && 0 <= low < 256 ==> ((high << 8) | low) == 256 * high + low;
        axiom four_up: \forall integer x; 0 <= x ==> (x << 4) == 16 * x;
        axiom eight_up: \forall integer x; 0 <= x ==> (x << 8) == 256 * x;
        axiom eight_down: \forall integer x; 0 <= x ==> (x >> 8) == x / 256;
    }
*/

#endif
