import { expect, it } from 'vitest';
import { accountName } from '../../infra/local/account.ts';

it('names who runs a command, also under a number that the machine has no name for', () => {
  expect(accountName(() => 'ops')).toBe('ops');
  const nameless = accountName(() => {
    throw Object.assign(new Error('uv_os_get_passwd returned ENOENT'), { code: 'ENOENT' });
  });
  expect(nameless).toBe(process.getuid === undefined ? 'unknown' : `uid ${process.getuid()}`);
});
