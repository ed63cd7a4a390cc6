/**
 * Files that are written for the user: {@code AtomicFile} completely or not at all, {@code EditedFile} with earlier versions next to it,
 * {@code PrivateFile} for this user only; {@code LineChanges} shows what will change, {@code FileFailure} says in plain words why a file
 * cannot be written. {@code KeptFile} is one that outlasts the process. Depends only on {@code upkeep}.
 */
package dev.lampwright.file;
