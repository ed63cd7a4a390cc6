/**
 * The boards that the reference firmware runs on: what it can do there, and the images of it that come with Lampwright. Begin with
 * {@code BoardKind}. It knows the wire's words and nothing above.
 */
package dev.lampwright.board;
