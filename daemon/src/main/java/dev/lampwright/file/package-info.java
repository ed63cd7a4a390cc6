/** Files that are written for the user, and how it is told if that fails. Knows no other package. */
package dev.lampwright.file;
