/**
 * Files that are written for the user: {@code AtomicFile} whole or not at all, {@code EditedFile} with what it was beside it, {@code
 * PrivateFile} for this user alone; {@code LineChanges} shows what will change, {@code FileFailure} says in plain words why a file cannot be
 * written. {@code KeptFile} is one that
 * outlasts the process. Knows nothing but {@code upkeep}.
 */
package dev.lampwright.file;
