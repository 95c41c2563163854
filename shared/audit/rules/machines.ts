import { rule, when, type Rule } from '../case.ts';
import { at, bodies, ofSection, quarterHours, unionMs, workSpans } from '../reading.ts';

/** Machines: hours that nobody was there to run, and ways of billing that adjusters strike out. */
export const machineRules: readonly Rule[] = [
  rule('machine-above-crew', 'repair', (audited) => {
    const crewMs = unionMs(workSpans(audited));
    return ofSection(audited, 'machines').flatMap(({ lineId, kind, item, quantity, amountCents }) => {
      const hours = kind === 'machine-hours' ? Number(quantity) : 0;
      const crewHours = quarterHours(crewMs);
      return when(hours > crewHours, () => ({
        about: lineId,
        lineId,
        atStakeCents: Math.round((amountCents ?? 0) * (1 - crewHours / hours)),
        params: { machineCode: item, hours, crewHours },
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
    bodies(facts, 'repair').flatMap(({ machines, crew }) =>
      machines.flatMap(({ machineCode, operatorWorkerId, inUse }) =>
        when(
          inUse.length > 0 &&
            (operatorWorkerId === null || !crew.some(({ workerId }) => workerId === operatorWorkerId)),
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
