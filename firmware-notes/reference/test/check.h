/** A test is a function without arguments that uses CHECK. It passes if no CHECK fails. */
#ifndef CHECK_H
#define CHECK_H

#include <stdbool.h>

/** Reports a failed check, and goes on. The rest is a format and its values, to describe the case. */
#define CHECK(holds, ...) check_that((holds), __FILE__, __LINE__, #holds, __VA_ARGS__)

/** Runs a test. */
#define RUN(test) check_run(#test, test)

void check_that(bool holds, const char *file, int line, const char *text, const char *format, ...)
    __attribute__((format(printf, 5, 6)));

void check_run(const char *name, void (*test)(void));

/** Prints how many tests passed and failed. Returns the program's exit status. */
int check_summary(void);

#endif
