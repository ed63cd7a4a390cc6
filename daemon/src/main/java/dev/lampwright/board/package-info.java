/**
 * The boards that the reference firmware runs on: its capabilities on each, and its images that come with Lampwright. Start with
 * {@code BoardKind}. Depends only on the protocol.
 */
package dev.lampwright.board;
