#include "check.h"

#include <stdarg.h>
#include <stdio.h>

/* Failed checks printed per test; the rest are only counted. */
#define TOLD_MOST 5

static int passed;
static int failed;
static int broken;

void check_that(bool holds, const char *file, int line, const char *text, const char *format, ...)
{
    if (holds)
        return;
    broken++;
    if (broken > TOLD_MOST)
        return;
    va_list values;
    va_start(values, format);
    fprintf(stderr, "%s:%d: does not hold: %s; ", file, line, text);
    vfprintf(stderr, format, values);
    fputc('\n', stderr);
    va_end(values);
}

void check_run(const char *name, void (*test)(void))
{
    broken = 0;
    test();
    if (broken == 0) {
        passed++;
        return;
    }
    failed++;
    fprintf(stderr, "%s: %d broken\n", name, broken);
}

int check_summary(void)
{
    printf("core: %d passed, %d failed\n", passed, failed);
    return failed == 0 ? 0 : 1;
}
