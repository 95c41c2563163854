import { editionOn } from './editions.ts';
import { distinctSorted } from './line.ts';
import type { RateBookEdition } from './rateBook.ts';
import { spanOf, type Span } from './stretches.ts';
import type { Work, WorkRecord } from './work.ts';

type Machine = WorkRecord['machines'][number];
type Rate = RateBookEdition['machines'][number];
type Held = NonNullable<Rate['includes']>[number];

/** Whether a rate already pays for something, so that it may not be billed on top. */
export const holds = (rate: Rate | undefined, what: Held): boolean => rate?.includes?.includes(what) ?? false;

/** Time in which a worker operated a machine whose rate holds its operator. */
export interface OperatedSpan extends Span {
  readonly machineCode: string;
}

function machinesHolding(
  { records, strike }: Work,
  editions: readonly RateBookEdition[],
  what: Held,
): Machine[] {
  const machines = records.flatMap((record) => record.machines);
  if (machines.length === 0) return [];
  const { edition } = editionOn(strike.date, editions);
  return machines.filter(({ machineCode }) =>
    holds(
      edition?.machines.find((item) => item.machineCode === machineCode),
      what,
    ),
  );
}

/**
 * By worker, the time in use of machines whose rate (of the edition of the strike's day) holds the operator: it is cut
 * from labour. Standing by is not operating, so time that a machine stood by stays labour.
 */
export function operatedInRate(
  work: Work,
  editions: readonly RateBookEdition[],
): ReadonlyMap<string, readonly OperatedSpan[]> {
  const byWorker = new Map<string, OperatedSpan[]>();
  for (const { operatorWorkerId, machineCode, inUse } of machinesHolding(work, editions, 'operator')) {
    if (operatorWorkerId === null) continue;
    const spans = byWorker.get(operatorWorkerId) ?? [];
    spans.push(...inUse.map((span) => ({ ...spanOf(span), machineCode })));
    byWorker.set(operatorWorkerId, spans);
  }
  return byWorker;
}

/**
 * Codes of the machines of a job whose rate holds fuel, sorted. Where there is one, fuel from stock is not billed beside
 * it (note `fuel-in-machine-rate`): nothing in the record says that it went into another machine.
 */
export function fuelInRates(work: Work, editions: readonly RateBookEdition[]): string[] {
  return distinctSorted(
    machinesHolding(work, editions, 'fuel')
      .filter(({ inUse, drivenMiles }) => inUse.length > 0 || (drivenMiles ?? 0) > 0)
      .map(({ machineCode }) => machineCode),
  );
}
