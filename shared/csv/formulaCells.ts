/**
 * What a spreadsheet may run: OWASP's `=`, `+`, `-`, `@`, tab, carriage return, and their full-width forms; a line feed and
 * a null as well. A cell that begins so gets an apostrophe before it. The library's own pattern stops at a line break and
 * lets `=1` with a second line pass.
 */
export const formulaCells = /^[=+\-@\t\r\n\0＝＋－＠]/u;
