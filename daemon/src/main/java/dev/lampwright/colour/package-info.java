/** Colour: CSS colours in, linear light inside, bytes out. Arithmetic only; what is lit, and when, is decided elsewhere. */
package dev.lampwright.colour;
