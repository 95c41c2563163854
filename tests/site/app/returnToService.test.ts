import { describe, expect, it } from 'vitest';
import type { Values } from '../../../site/src/app/form/nodes.ts';
import { returnToServiceSpec as spec } from '../../../site/src/app/form/specs/returnToService.ts';

/** A hydrant is not back before what shows that it works (decision 0164). */
const zone = 'America/New_York';
const opened: Values = {
  returnedAt: '2026-03-04T10:00',
  _returnedAt: '2026-03-04T10:00',
  proofs: [{ proof: 'no-leaks', result: '' }],
  valvesReopened: [],
};
const after = (change: Values): unknown => spec.follow!({ ...opened, ...change }, zone)['returnedAt'];
const passed = (at: string): Values => ({ proofs: [{ proof: 'no-leaks', result: 'passed', at }] });

describe('the time of a return that nobody has typed', () => {
  it('follows the latest proof, and a valve reopened after it', () => {
    expect(after(passed('2026-03-04T10:20'))).toBe('2026-03-04T10:20');
    expect(
      after({ ...passed('2026-03-04T10:20'), valvesReopened: [{ valveId: 'V-1', at: '2026-03-04T10:25' }] }),
    ).toBe('2026-03-04T10:25');
  });
  it('goes on following, and does not go back before the form was opened', () => {
    const once = spec.follow!({ ...opened, ...passed('2026-03-04T10:20') }, zone);
    expect(spec.follow!({ ...once, ...passed('2026-03-04T10:40') }, zone)['returnedAt']).toBe(
      '2026-03-04T10:40',
    );
    expect(after(passed('2026-03-04T09:00'))).toBe('2026-03-04T10:00');
  });
  it('stays as it was typed', () => {
    expect(after({ ...passed('2026-03-04T10:20'), returnedAt: '2026-03-04T10:05' })).toBe('2026-03-04T10:05');
  });
  it('knows the hour that the clock shows twice', () => {
    expect(
      spec.follow!(
        {
          ...opened,
          returnedAt: '2026-11-01T01:50@-04:00',
          _returnedAt: '2026-11-01T01:50@-04:00',
          ...passed('2026-11-01T01:10@-05:00'),
        },
        zone,
      )['returnedAt'],
    ).toBe('2026-11-01T01:10@-05:00');
  });
});
