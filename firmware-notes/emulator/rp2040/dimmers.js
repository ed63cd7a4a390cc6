/* PWM: RP2040 datasheet 4.5.3. */
const ENABLED = 1 << 0;
const PHASE_CORRECT = 1 << 1;
const INVERTED = [1 << 2, 1 << 3];
const FUNCTION_PWM = 4;

/** The first dimmer's pin, and how many there are: pins.h. */
const FIRST_PIN = 10;
const DIMMERS = 6;

/** What the dimmers do, calculated from the registers by the datasheet's rules. */
export function readDimmers(rp2040) {
  return Array.from({ length: DIMMERS }, (_, i) => readDimmer(rp2040, i, FIRST_PIN + i));
}

function readDimmer(rp2040, index, pin) {
  const slice = rp2040.pwm.channels[(pin >> 1) & 7];
  const output = pin & 1;
  const told = { output: `PWM${(pin >> 1) & 7}${'AB'[output]}`, pin: `GP${pin}` };
  if (rp2040.gpio[pin].functionSelect !== FUNCTION_PWM) {
    return { ...told, driven: false, duty: 0, hz: 0, from: null };
  }
  if (!(slice.csr & ENABLED) || slice.csr & PHASE_CORRECT || slice.div !== 1 << 4) {
    return { ...told, driven: true, duty: null, hz: null, from: null };
  }
  const level = (slice.cc >>> (16 * output)) & 0xffff;
  const share = Math.min(level / (slice.top + 1), 1);
  const duty = slice.csr & INVERTED[output] ? 1 - share : share;
  const changes = duty > 0 && duty < 1;
  const from = slice.csr & INVERTED[output] ? share : 0;
  const hz = changes ? rp2040.clkSys / (slice.top + 1) : 0;
  return { ...told, driven: true, duty: Math.round(duty * 1e6) / 1e6, hz: Math.round(hz * 1e3) / 1e3, from: changes ? Math.round(from * 1e6) / 1e6 : null };
}
