/** What is said to a person, with a code by which a text in another language is found. Depends on nothing else. */
package dev.lampwright.phrase;
