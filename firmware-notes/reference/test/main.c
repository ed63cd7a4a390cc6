#include "check.h"
#include "tests.h"

int main(void)
{
    wire_tests();
    setup_tests();
    clamp_tests();
    clamp_vector_tests();
    parts_tests();
    parts_vectors_tests();
    controller_tests();
    light_tests();
    change_tests();
    trouble_tests();
    return check_summary();
}
