import { userInfo } from 'node:os';

/**
 * Who runs a command, by the name of their account on this machine; its number where the account has no name, as in a
 * container that runs under a number that its list of users does not have.
 */
export function accountName(named: () => string = () => userInfo().username): string {
  try {
    return named();
  } catch {
    const uid = process.getuid?.();
    return uid === undefined ? 'unknown' : `uid ${uid}`;
  }
}
