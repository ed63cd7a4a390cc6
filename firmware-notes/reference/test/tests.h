/**
 * The groups of tests.
 */
#ifndef TESTS_H
#define TESTS_H

void wire_tests(void);
void setup_tests(void);
void clamp_tests(void);
void clamp_vector_tests(void);
void parts_tests(void);
void parts_vectors_tests(void);
void controller_tests(void);
void light_tests(void);
void change_tests(void);
void trouble_tests(void);

#endif
