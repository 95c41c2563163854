import { statementOf } from '../costs/statement.ts';
import { statementInput, workFromInput } from '../costs/statementInput.ts';
import { computation } from './computation.ts';

/** Invented rates and work. The schema is described field by field in docs/costs.md. */
export const statement = computation({
  name: 'statement',
  summary: 'packet.compute.statement.summary',
  output: 'packet.compute.statement.output',
  input: statementInput,
  example: {
    rateBook: {
      editionId: 'rates-2026',
      title: 'Rates 2026',
      effectiveFrom: '2026-01-01',
      effectiveTo: null,
      currency: 'USD',
      rounding: 'line-to-cent',
      authorities: [
        { authorityId: 'res-7', kind: 'resolution', title: 'Resolution 7', edition: '2026', page: '3' },
      ],
      labor: [
        {
          laborClass: 'mechanic',
          title: 'Hydrant mechanic',
          hourlyUsd: '38.40',
          fringeFraction: '0.2848',
          authorityId: 'res-7',
        },
      ],
      machines: [
        {
          machineCode: 'truck',
          title: 'Service truck',
          unit: 'hour',
          rateUsd: '24.50',
          standbyUsd: null,
          authorityId: 'res-7',
        },
      ],
      stock: [{ partNumber: 'KIT-6', title: 'Breakaway kit', unitPriceUsd: '412.00', authorityId: 'res-7' }],
      materialHandling: { fraction: '0.05', authorityId: 'res-7' },
      water: { per1000GalUsd: '6.15', authorityId: 'res-7' },
      flowTest: { eachUsd: '85.00', authorityId: 'res-7' },
    },
    work: {
      timeZone: 'America/Chicago',
      struckAt: '2026-03-04T02:10:00Z',
      crew: [
        {
          workerId: 'w-12',
          laborClass: 'mechanic',
          work: [{ from: '2026-03-04T14:00:00Z', to: '2026-03-04T18:20:00Z' }],
          breaks: [{ from: '2026-03-04T16:00:00Z', to: '2026-03-04T16:30:00Z' }],
        },
      ],
      machines: [
        {
          machineCode: 'truck',
          description: 'Service truck',
          operatorWorkerId: 'w-12',
          inUse: [{ from: '2026-03-04T14:00:00Z', to: '2026-03-04T18:20:00Z' }],
          standingBy: [],
          drivenMiles: null,
        },
      ],
      parts: [
        {
          partNumber: 'KIT-6',
          description: 'Breakaway kit',
          quantity: 1,
          source: { from: 'stock', issueSlip: 'S-101' },
        },
      ],
      flowTests: 1,
      waterLost: { gallons: 12000, basis: 'meter of the supply main before and after' },
    },
  },
  run: (input) =>
    statementOf(workFromInput(input), Array.isArray(input.rateBook) ? input.rateBook : [input.rateBook]),
});
