#ifndef LAMPWRIGHT_JSON_H
#define LAMPWRIGHT_JSON_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

/*
 * Writes one JSON object per line. A line is built in memory between json_begin and json_end, so that it reaches the stream whole. Keys
 * must not need escaping. Aborts if memory runs out.
 */
struct json {
    char *text;
    size_t length;
    size_t size;
};

void json_begin(struct json *json);

/* Ends the line and writes it to the stream. False if the stream did not accept it (see errno). */
bool json_end(struct json *json, FILE *stream);

void json_free(struct json *json);

void json_integer(struct json *json, const char *key, int64_t value);

/* A number with `decimals` places, 0 to 9. */
void json_number(struct json *json, const char *key, double value, int decimals);

void json_text(struct json *json, const char *key, const char *value);
void json_hex(struct json *json, const char *key, const uint8_t *bytes, size_t count);
void json_boolean(struct json *json, const char *key, bool value);
void json_null(struct json *json, const char *key);

/* Key is NULL for a member of an array. */
void json_open_object(struct json *json, const char *key);
void json_close_object(struct json *json);
void json_open_array(struct json *json, const char *key);
void json_close_array(struct json *json);

/* A string as a member of an array. */
void json_item(struct json *json, const char *value);

#endif
