import { problem, type Problem } from '../problems/problem.ts';
import { canonicalJson } from '../submissions/canonical.ts';
import { spanMs } from './hours.ts';
import { groupBy, spell } from './line.ts';
import { merged, spanOf } from './stretches.ts';
import type { Work, WorkRecord } from './work.ts';

type Machine = WorkRecord['machines'][number];

const inUseOf = ({ inUse }: Machine): string =>
  canonicalJson(inUse.map(({ from, to }) => `${from}/${to}`).sort());

/**
 * Machines that one record lists twice with the same hours. A code names a kind of machine, and two trucks of one kind
 * that came and left together are ordinary, so both are billed and the bill says so. Entries that are the same to the
 * last field and name one operator are one machine, since nobody operates two at once: billed once, and said.
 */
export function oncePerRecord(records: Work['records']): {
  readonly records: Work['records'];
  readonly problems: readonly Problem[];
} {
  const problems: Problem[] = [];
  const once = records.map((record) => {
    const entries = record.machines.map((machine) => ({ machine }));
    const left = new Set(entries);
    const inUse = entries.filter(({ machine }) => machine.inUse.length > 0);
    const alike = groupBy(inUse, ({ machine }) =>
      [machine.machineCode, machine.description.toLowerCase(), inUseOf(machine)].join('\u0000'),
    );
    for (const [, group] of alike) {
      if (group.length < 2) continue;
      const [{ machine }] = group;
      const { machineCode, description } = machine;
      const told = {
        machineCode,
        description,
        times: group.length,
        time: spell(spanMs(merged(machine.inUse.map(spanOf)))),
      };
      let standing = 0;
      for (const [, same] of groupBy(group, (entry) => canonicalJson(entry.machine))) {
        const one = same[0].machine.operatorWorkerId !== null;
        for (const repeated of one ? same.slice(1) : []) left.delete(repeated);
        standing += one ? 1 : same.length;
      }
      problems.push(
        problem(standing === 1 ? 'machine-listed-again' : 'machine-listed-twice', record.submissionId, {
          ...told,
          ...(standing === 1 ? { operatorWorkerId: machine.operatorWorkerId ?? '' } : { standing }),
        }),
      );
    }
    return left.size === entries.length
      ? record
      : { ...record, machines: [...left].map(({ machine }) => machine) };
  });
  return { records: once, problems };
}
