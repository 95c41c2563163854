import type { Subject } from '../../../shared/submissions/envelope.ts';
import type { WordKey } from '../../../shared/words/index.ts';
import { bareStrike, breakawaySteps, flowTestOf, gushing, ordinaryRepair, returned, told } from './bodies.ts';
import { declared } from './photos.ts';
import type { Teller } from './teller.ts';
import { lostBy } from './waterLost.ts';

/** One step of the main job as the terminal shows it: what was told, and the submissions that tell it. */
export interface Step {
  readonly words: WordKey;
  readonly tell: (teller: Teller) => void;
}

export interface MainJob {
  readonly hydrantId: string;
  readonly claimId: string;
  readonly steps: readonly Step[];
}

/** A strike last night, from the call to the claim: nine hours in the order in which a crew and a clerk live them. */
export function mainJob(teller: Teller): MainJob {
  const hydrantId = 'TH-0071';
  const strikeId = teller.id(9);
  const claimId = teller.id(1);
  const partyId = teller.id(8.5);
  const strike: Subject = { type: 'strike', strikeId };
  const claim: Subject = { type: 'claim', claimId };
  return {
    hydrantId,
    claimId,
    steps: [
      {
        words: 'demo.step.strike',
        tell: (t) =>
          t.tell('strike', strike, 9, {
            ...bareStrike,
            hydrantId,
            reportedBy: {
              source: 'police',
              name: 'Sgt. Delphine Arrowood',
              phone: '555-0144',
              reportedAt: t.hoursAgo(9.4),
            },
            struckAt: t.hoursAgo(9.5),
            struckAtBasis: 'reported',
            calledOutAt: t.hoursAgo(9.35),
            arrivedAt: t.hoursAgo(9),
            dispatch: told(t.hoursAgo(8.95)),
            found: gushing,
            hazards: ['traffic', 'flooding'],
            photos: [
              declared('sailmaker-overall', t.hoursAgo(8.9), 'Hydrant and vehicle path from the curb'),
              declared('sailmaker-scale', t.hoursAgo(8.88), 'Stem coupling with rule'),
            ],
          }),
      },
      {
        words: 'demo.step.shut',
        tell: (t) => {
          t.tell('valve-operation', strike, 8.8, {
            valveId: 'V-0071',
            valve: 'isolation',
            action: 'closed',
            at: t.hoursAgo(8.8),
            byWorkerId: 'w-102',
            waterShut: 'yes',
            turns: 14,
            note: null,
          });
          t.tell('out-of-service-notice', strike, 8.75, {
            markedOutOfServiceAt: t.hoursAgo(8.75),
            dispatch: null,
            note: null,
          });
          t.tell(
            'water-lost',
            strike,
            8.7,
            lostBy(gushing, {
              struckAt: t.hoursAgo(9.5),
              struckAtBasis: 'reported',
              waterShutAt: t.hoursAgo(8.8),
            }),
          );
        },
      },
      {
        words: 'demo.step.party',
        tell: (t) =>
          t.tell(
            'party',
            strike,
            8.5,
            {
              hitAndRun: 'no',
              vehicles: [
                {
                  kind: 'car',
                  plate: 'TNS 1185',
                  plateRegion: 'Tansy',
                  vin: null,
                  description: 'Gray sedan, right front',
                },
              ],
              driver: {
                name: 'Leopold Varga-Quill',
                address: '9 Thimble Ave, Tansy Harbor',
                phone: '555-0190',
              },
              owner: null,
              insurer: {
                company: 'Harrowgate Casualty',
                policyNumber: 'HC-4402-881',
                claimNumber: null,
                adjuster: null,
              },
              police: { agency: 'Tansy Harbor Police', reportNumber: 'TP-26-3012', officer: 'D. Arrowood' },
              crashReport: { codeSystem: 'MMUCC 5th ed., C7', code: '40', text: 'Fire hydrant' },
              note: null,
            },
            { submissionId: partyId },
          ),
      },
      {
        words: 'demo.step.repair',
        tell: (t) =>
          t.tell(
            'repair',
            strike,
            3,
            ordinaryRepair(t, {
              hydrantId,
              from: 6.5,
              to: 3,
              crew: ['w-101', 'w-102'],
              kit: 'BW-D51-BK',
              photos: [declared('sailmaker-repaired', t.hoursAgo(3), 'Rebuilt')],
              done: breakawaySteps,
              finished: true,
            }),
          ),
      },
      {
        words: 'demo.step.flow-test',
        tell: (t) =>
          t.tell(
            'flow-test',
            strike,
            2.5,
            flowTestOf(t, {
              rated: hydrantId,
              flowed: 'TH-0072',
              hoursAgo: 2.5,
              staticPsi: 74,
              residualPsi: 47,
              pitotPsi: 25,
              purpose: 'after-repair',
            }),
          ),
      },
      {
        words: 'demo.step.return',
        tell: (t) =>
          t.tell(
            'return-to-service',
            strike,
            2,
            returned(t, {
              closes: [strikeId],
              hoursAgo: 2,
              proofs: {
                'no-leaks': 'passed',
                'opens-and-closes-fully': 'passed',
                'drains-down': 'passed',
                'flow-test': 'passed',
              },
              valve: 'V-0071',
            }),
          ),
      },
      {
        words: 'demo.step.claim',
        tell: (t) =>
          t.tell(
            'claim-opened',
            claim,
            1,
            {
              strikeId,
              partyId,
              claimNumber: '2026-0001',
              payerKind: 'drivers-insurer',
              payer: {
                name: 'Harrowgate Casualty',
                address: '200 Counting House Row, Tansy City',
                attention: 'Property damage claims',
                reference: null,
              },
              note: null,
            },
            { role: 'clerk' },
          ),
      },
    ],
  };
}
