#include "command.h"

#include <ctype.h>
#include <stdlib.h>
#include <string.h>

enum { MOST_WORDS = 6, LONGEST_LINE = 200 };

#define MOST_MS 3600000
#define MOST_COUNT 1000000000

struct words {
    char text[LONGEST_LINE + 1];
    const char *word[MOST_WORDS];
    int count;
};

static bool split(const char *line, struct words *words)
{
    char *rest = NULL;
    if (strlen(line) > LONGEST_LINE)
        return false;
    strcpy(words->text, line);
    words->count = 0;
    for (char *word = strtok_r(words->text, " \t\r", &rest); word != NULL; word = strtok_r(NULL, " \t\r", &rest)) {
        if (words->count == MOST_WORDS)
            return false;
        words->word[words->count++] = word;
    }
    return words->count > 0;
}

static bool read_number(const char *word, uint64_t least, uint64_t most, uint64_t *value)
{
    char *end;
    if (!isdigit((unsigned char)word[0]) || strlen(word) > 10)
        return false;
    *value = strtoull(word, &end, 10);
    return *end == 0 && *value >= least && *value <= most;
}

static bool read_time(const struct words *words, struct command *command)
{
    return words->count == 2 && read_number(words->word[1], 0, MOST_MS, &command->ms);
}

/* KIND [up|down] N [every K] */
static bool read_trouble(const struct words *words, struct command *command)
{
    int at = 1;
    command->kind = COMMAND_TROUBLE;
    command->up = false;
    command->every = 1;
    if (at < words->count && (strcmp(words->word[at], "up") == 0 || strcmp(words->word[at], "down") == 0))
        command->up = strcmp(words->word[at++], "up") == 0;
    if (at == words->count || !read_number(words->word[at++], 0, MOST_COUNT, &command->count))
        return false;
    if (at == words->count)
        return true;
    return at + 2 == words->count && strcmp(words->word[at], "every") == 0
        && read_number(words->word[at + 1], 1, MOST_COUNT, &command->every);
}

/* Numbers separated by commas, as mA of `unit_mA` each. Returns how many; 0 if there are none or too many. */
static unsigned read_currents(const char *word, unsigned most, double unit_mA, double *mA)
{
    char text[LONGEST_LINE + 1];
    char *rest = NULL;
    unsigned count = 0;
    strcpy(text, word);
    for (char *number = strtok_r(text, ",", &rest); number != NULL; number = strtok_r(NULL, ",", &rest)) {
        uint64_t value;
        if (count == most || !read_number(number, 0, MOST_COUNT, &value))
            return 0;
        mA[count++] = (double)value * unit_mA;
    }
    return count;
}

/* fuse 0, or fuse MA US DARK_UA CHANNEL_UA,... DIMMER_MA,... */
static bool read_fuse(const struct words *words, struct command *command)
{
    struct fuse_rating *fuse = &command->fuse;
    uint64_t us;
    command->kind = COMMAND_FUSE;
    *fuse = (struct fuse_rating){0};
    if (words->count == 2 && strcmp(words->word[1], "0") == 0)
        return true;
    if (words->count != 6 || !read_number(words->word[2], 0, MOST_MS, &us))
        return false;
    fuse->bears_ps = us * 1000000;
    fuse->channels = read_currents(words->word[4], FUSE_CHANNELS, 1e-3, fuse->channel_mA);
    return read_currents(words->word[1], 1, 1, &fuse->most_mA) == 1 && fuse->most_mA > 0
        && read_currents(words->word[3], 1, 1e-3, &fuse->dark_mA) == 1 && fuse->channels >= 3
        && read_currents(words->word[5], DIMMER_OUTPUTS, 1, fuse->dimmer_mA) > 0;
}

static bool read_trouble_kind(const char *word, enum trouble_kind *kind)
{
    static const char *const names[TROUBLE_KINDS] = {"drop", "flip", "double"};
    for (int i = 0; i < TROUBLE_KINDS; i++)
        if (strcmp(word, names[i]) == 0) {
            *kind = (enum trouble_kind)i;
            return true;
        }
    return false;
}

static bool read_plain(const struct words *words, struct command *command)
{
    static const struct {
        const char *name;
        enum command_kind kind;
    } plain[] = {
        {"reset", COMMAND_RESET}, {"brown_out", COMMAND_BROWN_OUT}, {"hang", COMMAND_HANG}, {"unplug", COMMAND_UNPLUG}, {"plug", COMMAND_PLUG},
        {"stats", COMMAND_STATS}, {"quit", COMMAND_QUIT},
    };
    for (unsigned i = 0; i < sizeof plain / sizeof plain[0]; i++)
        if (words->count == 1 && strcmp(words->word[0], plain[i].name) == 0) {
            command->kind = plain[i].kind;
            return true;
        }
    return false;
}

bool command_read(const char *line, struct command *command, const char **complaint)
{
    struct words words;
    *complaint = "say deaf MS, stall MS, drop|flip|double [up|down] N [every K], fuse, reset, brown_out, hang, unplug, plug, stats or quit";
    if (!split(line, &words))
        return false;
    if (strcmp(words.word[0], "deaf") == 0 || strcmp(words.word[0], "stall") == 0) {
        command->kind = words.word[0][0] == 'd' ? COMMAND_DEAF : COMMAND_STALL;
        *complaint = "say deaf MS or stall MS, MS 0 to 3600000";
        return read_time(&words, command);
    }
    if (strcmp(words.word[0], "fuse") == 0) {
        *complaint = "say fuse MA US DARK_UA CHANNEL_UA,CHANNEL_UA,... DIMMER_MA,..., or fuse 0";
        return read_fuse(&words, command);
    }
    if (read_trouble_kind(words.word[0], &command->trouble)) {
        *complaint = "say drop, flip or double, then up or down if wanted, then N, then every K if wanted";
        return read_trouble(&words, command);
    }
    return read_plain(&words, command);
}
