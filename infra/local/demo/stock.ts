import type { BodyOf } from '../../../shared/submissions/submission.ts';
import type { Subject } from '../../../shared/submissions/envelope.ts';
import type { Teller } from './teller.ts';

const utility: Subject = { type: 'utility' };
/** Two invented places where parts are kept; `bodies.ts` takes the parts of its repairs from the truck. */
const yard = 'Yard, shelf B2';
const truck = 'Truck 1';

type Counted = BodyOf<'stock-count'>['parts'][number];
type Least = BodyOf<'stock-minimum'>['parts'][number];

const described: Readonly<Record<string, string>> = {
  'BW-D51-BK': 'Breakaway repair kit D-51',
  'BW-D45-BK': 'Breakaway repair kit D-45',
  'BW-GSK': 'Nozzle section gasket set',
  'GRS-FG': 'Food-grade grease, 14 oz',
  'LM-W3-BO': 'Break-off bolts and base gasket',
};
const part = (partNumber: string) => ({ partNumber, description: described[partNumber] ?? null });
const counted = (amounts: Readonly<Record<string, number>>): Counted[] =>
  Object.entries(amounts).map(([partNumber, count]) => ({ ...part(partNumber), counted: count }));
const least = (amounts: Readonly<Record<string, number>>): Least[] =>
  Object.entries(amounts).map(([partNumber, minimum]) => ({ ...part(partNumber), minimum }));

/**
 * Stock at two places: gaskets low in the yard, the D-45 kit out on the truck, the wet barrel's kit never counted where
 * its least level is known. Hours as the stories have them: the last repairs come after the counts.
 */
export function stockOfParts(t: Teller): void {
  t.tell(
    'stock-minimum',
    utility,
    2000,
    { place: yard, parts: least({ 'BW-D51-BK': 2, 'BW-D45-BK': 2, 'BW-GSK': 4, 'LM-W3-BO': 1 }), note: null },
    { role: 'manager' },
  );
  t.tell(
    'stock-minimum',
    utility,
    1999,
    { place: truck, parts: least({ 'BW-D51-BK': 1, 'BW-D45-BK': 1, 'BW-GSK': 1 }), note: null },
    { role: 'manager' },
  );
  t.tell('stock-count', utility, 130, {
    place: yard,
    countedAt: t.hoursAgo(130),
    byWorkerId: 'w-102',
    parts: counted({ 'BW-D51-BK': 5, 'BW-D45-BK': 3, 'BW-GSK': 6, 'GRS-FG': 9 }),
    note: null,
  });
  t.tell('stock-count', utility, 128, {
    place: truck,
    countedAt: t.hoursAgo(128),
    byWorkerId: 'w-101',
    parts: counted({ 'BW-D51-BK': 1, 'BW-D45-BK': 0, 'BW-GSK': 1, 'GRS-FG': 2 }),
    note: null,
  });
  t.tell('stock-move', utility, 120, {
    from: yard,
    to: truck,
    movedAt: t.hoursAgo(120),
    byWorkerId: 'w-102',
    parts: [
      { ...part('BW-D51-BK'), quantity: 3 },
      { ...part('BW-GSK'), quantity: 3 },
    ],
    reference: null,
    note: null,
  });
}
