#include "json.h"

#include <inttypes.h>
#include <stdlib.h>
#include <string.h>

static void reserve(struct json *json, size_t more)
{
    if (json->length + more <= json->size)
        return;
    json->size = (json->length + more) * 2;
    json->text = realloc(json->text, json->size);
    if (json->text == NULL)
        abort();
}

static void append(struct json *json, const char *bytes, size_t count)
{
    reserve(json, count);
    memcpy(json->text + json->length, bytes, count);
    json->length += count;
}

static void append_string(struct json *json, const char *string)
{
    append(json, string, strlen(string));
}

static void append_quoted(struct json *json, const char *string)
{
    append(json, "\"", 1);
    for (; *string != 0; string++) {
        char escaped[8];
        unsigned char c = (unsigned char)*string;
        if (c == '"' || c == '\\')
            snprintf(escaped, sizeof escaped, "\\%c", c);
        else if (c < 0x20)
            snprintf(escaped, sizeof escaped, "\\u%04x", c);
        else
            snprintf(escaped, sizeof escaped, "%c", c);
        append_string(json, escaped);
    }
    append(json, "\"", 1);
}

static bool starts_a_list(const struct json *json)
{
    char last = json->text[json->length - 1];
    return last == '{' || last == '[';
}

static void member(struct json *json, const char *key)
{
    if (!starts_a_list(json))
        append(json, ",", 1);
    if (key == NULL)
        return;
    append_quoted(json, key);
    append(json, ":", 1);
}

void json_begin(struct json *json)
{
    json->length = 0;
    append(json, "{", 1);
}

bool json_end(struct json *json, FILE *stream)
{
    append(json, "}\n", 2);
    return fwrite(json->text, 1, json->length, stream) == json->length && fflush(stream) == 0;
}

void json_free(struct json *json)
{
    free(json->text);
    *json = (struct json){0};
}

void json_integer(struct json *json, const char *key, int64_t value)
{
    char digits[24];
    snprintf(digits, sizeof digits, "%" PRId64, value);
    member(json, key);
    append_string(json, digits);
}

void json_number(struct json *json, const char *key, double value, int decimals)
{
    char digits[64];
    snprintf(digits, sizeof digits, "%.*f", decimals, value);
    member(json, key);
    append_string(json, digits);
}

void json_text(struct json *json, const char *key, const char *value)
{
    member(json, key);
    append_quoted(json, value);
}

void json_hex(struct json *json, const char *key, const uint8_t *bytes, size_t count)
{
    static const char digits[] = "0123456789abcdef";
    member(json, key);
    reserve(json, 2 * count + 2);
    json->text[json->length++] = '"';
    for (size_t i = 0; i < count; i++) {
        json->text[json->length++] = digits[bytes[i] >> 4];
        json->text[json->length++] = digits[bytes[i] & 15];
    }
    json->text[json->length++] = '"';
}

void json_boolean(struct json *json, const char *key, bool value)
{
    member(json, key);
    append_string(json, value ? "true" : "false");
}

void json_null(struct json *json, const char *key)
{
    member(json, key);
    append_string(json, "null");
}

void json_open_object(struct json *json, const char *key)
{
    member(json, key);
    append(json, "{", 1);
}

void json_close_object(struct json *json)
{
    append(json, "}", 1);
}

void json_open_array(struct json *json, const char *key)
{
    member(json, key);
    append(json, "[", 1);
}

void json_close_array(struct json *json)
{
    append(json, "]", 1);
}

void json_item(struct json *json, const char *value)
{
    json_text(json, NULL, value);
}
