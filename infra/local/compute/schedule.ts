import { readFile } from 'node:fs/promises';
import * as z from 'zod';
import { Refused } from '../../../shared/compute/refused.ts';
import { readSchedule } from '../../../shared/costs/schedule/readSchedule.ts';
import { machineFromRow } from '../../../shared/costs/schedule/scheduleRow.ts';
import { problem } from '../../../shared/problems/problem.ts';
import { sayProblem } from '../../../shared/words/index.ts';
import { localComputation } from './localComputation.ts';

/** `npm run -s compute -- equipment-schedule FILE.csv`, or a question that names the file or holds its text. */
const equipmentSchedule = localComputation({
  name: 'equipment-schedule',
  summary: 'compute.equipment-schedule.summary',
  output: 'compute.equipment-schedule.output',
  input: z.strictObject({
    scheduleFile: z.string().min(1).max(1000).optional(),
    scheduleText: z.string().min(1).max(5_000_000).optional(),
    /** The authority that the machine rates name, by its code in the rate book. */
    authorityId: z.string().trim().min(1).max(64).default('schedule'),
  }),
  example: {
    scheduleText: 'code,equipment,size,hp,unit,rate\n9001,"Pump, Trash",3 In,to 5,hour,13.00\n',
  },
  run: async ({ scheduleFile, scheduleText, authorityId }, { locale }) => {
    if ((scheduleFile === undefined) === (scheduleText === undefined))
      throw new Refused([problem('schedule-file-or-text', 'scheduleFile')]);
    const text = scheduleText ?? (await textOf(scheduleFile ?? ''));
    const { counts, rows, problems } = readSchedule(text);
    const path = scheduleText === undefined ? 'scheduleFile' : 'scheduleText';
    if (problems.length > 0) throw new Refused(problems.map((found) => ({ ...found, path })));
    return {
      counts,
      rows: rows.map((row) => ({
        ...row,
        reasons: row.reasons.map((reason) => sayProblem(locale, reason)),
        machine: machineFromRow(row, authorityId),
      })),
    };
  },
});

async function textOf(file: string): Promise<string> {
  try {
    return await readFile(file, 'utf8');
  } catch (error) {
    const reason = (error as NodeJS.ErrnoException).code ?? String(error);
    throw new Refused([problem('file-unreadable', 'scheduleFile', { file, reason })]);
  }
}

export const scheduleComputations = [equipmentSchedule] as const;
