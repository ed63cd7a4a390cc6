/** Which look is shown now, and the fade from one to the next. Knows states, signals, events and looks; draws nothing itself. */
package dev.lampwright.cue;
