/**
 * What the strip and the dimmers show: a look is a stack of layers, a layer is paint × extent × rhythm. Works on flat arrays of linear
 * light and knows neither files nor wires; time and randomness are passed in.
 */
package dev.lampwright.look;
