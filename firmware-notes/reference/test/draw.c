#include "draw.h"

/* Much less than the smallest step of any current, 12 mA / 255, and much more than doubles of this size lose. */
#define SLACK_MA 1e-6

double draw_dark_mA(const struct setup *setup, uint8_t supply)
{
    return setup->supply == supply ? setup->pixels * (double)setup->dark_uA / 1000 : 0;
}

static double strip_mA(const struct setup *setup, const uint8_t *bytes)
{
    double mA = 0;
    for (int i = 0; i < setup->pixels * setup->channels; i++)
        mA += bytes[i] / 255.0 * setup->channel_uA[i % setup->channels] / 1000;
    return mA;
}

double draw_mA(const struct setup *setup, const uint8_t *bytes, const uint16_t *duty, uint8_t supply)
{
    double mA = draw_dark_mA(setup, supply);
    if (setup->supply == supply)
        mA += strip_mA(setup, bytes);
    for (int i = 0; i < setup->dimmers; i++)
        if (setup->dimmer[i].supply == supply)
            mA += duty[i] / 65535.0 * setup->dimmer[i].full_mA;
    return mA;
}

bool draw_within(const struct setup *setup, const uint8_t *bytes, const uint16_t *duty)
{
    for (uint8_t supply = 0; supply < setup->supplies; supply++) {
        double most = setup->ceiling_mA[supply];
        double dark = draw_dark_mA(setup, supply);
        if (draw_mA(setup, bytes, duty, supply) > (most > dark ? most : dark) + SLACK_MA)
            return false;
    }
    return true;
}
