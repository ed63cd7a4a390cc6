/**
 * JSON (RFC 8259) that is written, by what writes it: objects and arrays that are put together piece by piece. The only place but
 * {@code payload} that imports the JSON library's writers. Knows no other package.
 */
package dev.lampwright.json;
