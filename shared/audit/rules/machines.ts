import { ofKind } from '../../submissions/effective.ts';
import { rule, when, type AuditCase, type Rule } from '../case.ts';
import { at, HOUR_MS, ofSection, quarterHours, unionMs, workSpans } from '../reading.ts';

const A_MINUTE_MS = 60_000;

/**
 * Whether a machine works with nobody at it, by the edition that bills it: a property of the machine that the rate book
 * states, as no published schedule does (common practice, no source).
 */
const isUnattended = ({ statement, editions }: AuditCase, machineCode: string): boolean =>
  statement.lines.some(
    ({ section, item, editionId }) =>
      section === 'machines' &&
      item === machineCode &&
      editions
        .find(({ edition }) => edition.editionId === editionId)
        ?.edition.machines.find((machine) => machine.machineCode === machineCode)?.unattended === true,
  );

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
        params: {
          machineCode: item,
          hours: quarterHours(hours * HOUR_MS),
          crewHours,
          unattended: isUnattended(audited, item) ? 'yes' : 'no',
        },
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
  rule('machine-without-operator', 'repair', (audited) =>
    ofKind(audited.facts, 'repair').flatMap(({ fact: { submissionId, body } }, _, repairs) =>
      body.machines.flatMap(({ machineCode, operatorWorkerId, inUse }) =>
        when(
          inUse.length > 0 &&
            !isUnattended(audited, machineCode) &&
            (operatorWorkerId === null ||
              // One record may list the people and another the machines.
              !repairs.some(({ fact }) =>
                fact.body.crew.some(({ workerId }) => workerId === operatorWorkerId),
              )),
          () => ({
            about: `${machineCode}@${String(at(inUse[0]?.from ?? ''))}`,
            of: [submissionId],
            atStakeCents: audited.statement.lines
              .filter(({ section, item }) => section === 'machines' && item === machineCode)
              .reduce((sum, { amountCents }) => sum + (amountCents ?? 0), 0),
            params: { machineCode },
          }),
        ),
      ),
    ),
  ),
];
