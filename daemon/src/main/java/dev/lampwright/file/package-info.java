/**
 * Files that are written for the user: {@code AtomicFile} whole or not at all, {@code PrivateFile} for this user alone; {@code
 * FileFailure} says in plain words why one cannot be. Knows no other package.
 */
package dev.lampwright.file;
