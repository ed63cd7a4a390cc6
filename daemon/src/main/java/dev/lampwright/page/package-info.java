/**
 * The live page: the JDK's HTTP server, server-sent events to viewers, and the access check. Start with {@code PageHandler}, which answers
 * each request ({@code HttpCall}), behind {@code AccessCheck}; {@code Publisher} observes the daemon from outside and gives each
 * {@code Viewer} what is new. It asks at the daemon's desk, and never makes the daemon wait: a viewer that is too slow simply misses news.
 * The page itself, plain HTML, CSS and JavaScript, is in the resources next to this package.
 */
package dev.lampwright.page;
