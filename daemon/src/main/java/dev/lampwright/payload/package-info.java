/**
 * What is in a message: a {@link dev.lampwright.payload.Source} says where to look, {@link dev.lampwright.payload.Payload} finds it, units
 * and plausible ranges turn it into a number. Knows neither the broker nor the printer.
 */
package dev.lampwright.payload;
