/**
 * Pictures of light: the frames that would have been sent, combined into shots, as one still picture with time down its side or as a moving
 * one. Start with {@code Camera}, which takes a {@code Film}; {@code StillPicture} and {@code MovingPicture} draw it on {@code Paper}.
 * Draws with the Java library only, without a screen and without fonts; the same frames give the same picture. Knows nothing about files,
 * configurations or where the frames come from. The only place that imports {@code java.awt} and {@code javax.imageio}.
 */
package dev.lampwright.tool.picture;
