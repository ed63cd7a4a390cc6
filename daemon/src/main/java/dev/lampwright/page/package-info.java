/**
 * The live page: the JDK's HTTP server, server-sent events to whoever watches, and the check of who may. Begin with {@code PageHandler},
 * which answers each request ({@code HttpCall}), behind {@code AccessCheck}; {@code Publisher} looks at the daemon from outside and gives
 * each {@code Viewer} what is new. It asks at the daemon's desk, and never makes the daemon wait: what a viewer is too slow for is lost to
 * that viewer alone. The page itself, plain HTML, CSS and JavaScript, lies in the resources beside this package.
 */
package dev.lampwright.page;
