/** Lemmas about products, shares and divisions for the contracts, each proved separately. The compiler needs nothing from here. */
#ifndef ARITHMETIC_H
#define ARITHMETIC_H

/*@ lemma products_are_not_negative: \forall integer x, y; 0 <= x && 0 <= y ==> 0 <= x * y;
    lemma no_less: \forall integer x, y, times; 0 <= times && x <= y ==> x * times <= y * times;
    lemma weighed: \forall integer after, before, weight, factor;
        0 <= weight && 65536 * after <= before * factor ==> 65536 * (after * weight) <= before * weight * factor;
    lemma whole_division: \forall integer x, y; 0 <= x && 0 < y ==> y * (x / y) <= x;
    lemma factor_fits: \forall integer room, load; 0 <= room < load ==> 0 <= room * 65536 / load < 65536;
    lemma next_of_three: \forall integer n; 0 <= n ==> (n + 1) % 3 == (n % 3 == 2 ? 0 : n % 3 + 1);
    lemma next_of_four: \forall integer n; 0 <= n ==> (n + 1) % 4 == (n % 4 == 3 ? 0 : n % 4 + 1);

    // What a value draws by its weight, and its share by a factor. These are definitions: as axioms, so that the provers see the lemmas
    // apply before they multiply everything out.
    axiomatic Shares {
        logic integer draw(integer value, integer weight);
        axiom draw_is: \forall integer value, weight; draw(value, weight) == value * weight;
        logic integer share(integer value, integer factor);
        axiom share_is: \forall integer value, factor; share(value, factor) == value * factor / 65536;
    }
    lemma draw_is_not_negative: \forall integer value, weight; 0 <= value && 0 <= weight ==> 0 <= draw(value, weight);
    lemma draw_grows: \forall integer value, more, weight; 0 <= weight && value <= more ==> draw(value, weight) <= draw(more, weight);
    lemma draw_grows_by_weight: \forall integer value, weight, more; 0 <= value && weight <= more ==>
        draw(value, weight) <= draw(value, more);
    lemma share_is_not_negative: \forall integer value, factor; 0 <= value && 0 <= factor ==> 0 <= share(value, factor);
    lemma share_is_no_more: \forall integer value, factor; 0 <= value && 0 <= factor ==> 65536 * share(value, factor) <= value * factor;
    lemma share_of_draw: \forall integer value, weight, factor; 0 <= value && 0 <= weight && 0 <= factor ==>
        draw(share(value, factor), weight) <= share(draw(value, weight), factor);
    lemma shares_together: \forall integer one, other, factor; 0 <= one && 0 <= other && 0 <= factor ==>
        share(one, factor) + share(other, factor) <= share(one + other, factor);
    lemma two_shares: \forall integer one, other, less, lesser, factor; 0 <= one && 0 <= other && 0 <= factor
        && less <= share(one, factor) && lesser <= share(other, factor) ==> less + lesser <= share(one + other, factor);
    lemma share_of_nothing: \forall integer value; share(value, 0) == 0;
*/

#endif
