import { rule, when, type Rule } from '../case.ts';
import { at, bodies, HOUR_MS, ofSection, quarterHours, unionMs, workSpans } from '../reading.ts';

const A_MINUTE_MS = 60_000;

/** Machines: hours that nobody was there to run, and ways of billing that adjusters strike out. */
export const machineRules: readonly Rule[] = [
  rule('machine-above-crew', 'repair', (audited) => {
    const crewMs = unionMs(workSpans(audited));
    return ofSection(audited, 'machines').flatMap(({ lineId, kind, item, quantity, amountCents }) => {
      const hours = kind === 'machine-hours' ? Number(quantity) : 0;
      const crewHours = quarterHours(crewMs);
      // Hours are printed to four places, and a minute is nothing to argue over.
      return when(hours * HOUR_MS > crewMs + A_MINUTE_MS, () => ({
        about: lineId,
        lineId,
        atStakeCents: Math.round((amountCents ?? 0) * (1 - crewMs / (hours * HOUR_MS))),
        params: { machineCode: item, hours: quarterHours(hours * HOUR_MS), crewHours },
      }));
    });
  }),
  rule('machine-by-day', 'repair', (audited) =>
    ofSection(audited, 'machines').flatMap(({ lineId, kind, item, quantity, amountCents }) =>
      when(kind === 'machine-days', () => ({
        about: lineId,
        lineId,
        atStakeCents: amountCents ?? 0,
        params: { machineCode: item, days: Number(quantity) },
      })),
    ),
  ),
  rule('standby-billed', 'repair', (audited) =>
    ofSection(audited, 'machines').flatMap(({ lineId, kind, item, amountCents }) =>
      when(kind === 'machine-standby', () => ({
        about: lineId,
        lineId,
        atStakeCents: amountCents ?? 0,
        params: { machineCode: item },
      })),
    ),
  ),
  rule('machine-without-operator', 'repair', ({ facts, statement }) =>
    bodies(facts, 'repair').flatMap(({ machines }, _, repairs) =>
      machines.flatMap(({ machineCode, operatorWorkerId, inUse }) =>
        when(
          inUse.length > 0 &&
            (operatorWorkerId === null ||
              // One record may list the people and another the machines.
              !repairs.some(({ crew }) => crew.some(({ workerId }) => workerId === operatorWorkerId))),
          () => ({
            about: `${machineCode}@${String(at(inUse[0]?.from ?? ''))}`,
            atStakeCents: statement.lines
              .filter(({ section, item }) => section === 'machines' && item === machineCode)
              .reduce((sum, { amountCents }) => sum + (amountCents ?? 0), 0),
            params: { machineCode },
          }),
        ),
      ),
    ),
  ),
];
