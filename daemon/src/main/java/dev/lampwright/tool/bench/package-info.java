/**
 * The bench: where looks are made, drawn without a strip, judged, tried and saved, at the request of the live page. Begin with
 * {@code LookBench}, which answers each request; a look is a table of the file throughout ({@code BenchLook}), is read and judged by the
 * code that reads the file and by {@code tool.check}, and drawn by the chain that lights the strip. Knows nothing of HTTP.
 */
package dev.lampwright.tool.bench;
