#include "fuse.h"

/* Rounding of a sum, in mA. */
#define SLACK_MA 1e-6

void fuse_fit(struct fuse *fuse, const struct fuse_rating *rating)
{
    *fuse = (struct fuse){.fitted = true, .rating = *rating};
}

double fuse_strip_mA(const struct fuse_rating *rating, const uint8_t *bytes, size_t count)
{
    double mA = rating->dark_mA;
    for (size_t i = 0; i < count; i++)
        mA += bytes[i] / 255.0 * rating->channel_mA[i % rating->channels];
    return mA;
}

static void note_time_over(struct fuse *fuse, uint64_t now_ps)
{
    if (fuse->over && now_ps - fuse->over_since_ps > fuse->longest_ps)
        fuse->longest_ps = now_ps - fuse->over_since_ps;
}

void fuse_load(struct fuse *fuse, double strip_mA, const struct dimmer dimmers[DIMMER_OUTPUTS], uint64_t at_ps)
{
    double sum_mA = strip_mA;
    for (int i = 0; i < DIMMER_OUTPUTS; i++)
        sum_mA += dimmers[i].duty * fuse->rating.dimmer_mA[i];
    note_time_over(fuse, at_ps);
    bool over = sum_mA > fuse->rating.most_mA + SLACK_MA;
    if (over && !fuse->over)
        fuse->over_since_ps = at_ps;
    fuse->over = over;
    if (sum_mA > fuse->highest_mA)
        fuse->highest_mA = sum_mA;
}

bool fuse_until(struct fuse *fuse, uint64_t now_ps)
{
    note_time_over(fuse, now_ps);
    if (fuse->blown || fuse->longest_ps <= fuse->rating.bears_ps)
        return false;
    fuse->blown = true;
    return true;
}
