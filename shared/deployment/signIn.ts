/**
 * Where the sign-in page sends a browser back that signs in for a command on this machine. The page knows this address to
 * the letter, port and all.
 */
export const commandsReturnTo = 'http://localhost:8437/signed-in';
