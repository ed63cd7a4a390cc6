/**
 * The live page: the JDK's HTTP server, server-sent events to whoever watches, and the door that lets in. Looks at the daemon from
 * outside, asks at its desk, and never makes it wait: what a viewer is too slow for is lost to that viewer alone. The page itself,
 * plain HTML, CSS and JavaScript, lies in the resources beside this package.
 */
package dev.lampwright.page;
