import { availableFlowCard } from '../hydraulics/availableFlow.ts';
import type { FormulaCard, Source } from '../hydraulics/card.ts';
import { diffuserFlowCard } from '../hydraulics/diffuser.ts';
import type { FlowTestSettings } from '../hydraulics/flowTestSettings.ts';
import { hydrantClassCard } from '../hydraulics/hydrantClass.ts';
import { outletFlowCard } from '../hydraulics/outletFlow.ts';
import { pressureDropCard } from '../hydraulics/pressureDrop.ts';
import { pumperFactorCard } from '../hydraulics/pumperOutlet.ts';
import { formatNumber } from '../units/format.ts';
import type { Block, Row } from './blocks.ts';
import type { PacketReader } from './reader.ts';
import type { PacketTest } from './testSchema.ts';

interface Used {
  readonly tests: readonly PacketTest[];
  /** Whether any of them gave a capacity. */
  readonly rated: boolean;
  readonly settings: FlowTestSettings;
  /** Rules that the utility set otherwise: then the rule is its own, and no standard is cited for it. */
  readonly own: { readonly classBands: boolean; readonly minimumDrop: boolean };
  readonly utility: string;
}

/** Equation, constant and source of every formula that a figure of these tests came through, and of no other. */
export function formulaBlocks({ tests, rated, settings, own, utility }: Used, reader: PacketReader): Block[] {
  const { say, locale } = reader;
  // A metered flow stands in place of the outlets.
  const kinds = new Set(
    tests.flatMap(({ outlets, meteredFlowGpm }) =>
      meteredFlowGpm === null ? outlets.map(({ kind }) => kind) : [],
    ),
  );
  const bands = settings.classBands.map(({ hydrantClass, name, fromGpm }) =>
    say('packet.formula.band', {
      hydrantClass: name ?? hydrantClass,
      fromGpm: formatNumber(fromGpm, locale, 0),
    }),
  );
  const rows: Row[] = [];
  const add = (
    { id, equation, sources }: Pick<FormulaCard, 'id' | 'equation' | 'sources'>,
    inWords = equation,
    isOwn = false,
  ): void => {
    const cited = isOwn
      ? [say('packet.formula.own-rule', { utility })]
      : sources.map((source) => sayCited(source, reader));
    // No embedded face has a root sign.
    const printed = inWords.replaceAll('√p', 'p^½');
    rows.push({
      cells: [
        [
          { text: say(`hydraulics.card.${id}`), look: 'strong' },
          { text: printed, look: 'body' },
        ],
        cited.map((text) => ({ text, look: 'small' })),
      ],
    });
  };
  if (kinds.has('hose') || kinds.has('pumper')) add(outletFlowCard);
  if (kinds.has('pumper')) add(pumperFactorCard, say('packet.formula.pumper-factor'));
  if (kinds.has('diffuser')) add(diffuserFlowCard);
  add(
    pressureDropCard,
    say('packet.formula.pressure-drop', { fraction: formatNumber(settings.minimumDropFraction, locale, 2) }),
    own.minimumDrop,
  );
  if (rated) {
    add(availableFlowCard);
    add(hydrantClassCard, say('packet.formula.hydrant-class', { bands: bands.join(', ') }), own.classBands);
  }
  return [
    { type: 'heading', level: 2, text: say('packet.formula.title') },
    { type: 'paragraph', look: 'small', text: say('packet.formula.how') },
    {
      type: 'table',
      summary: say('packet.formula.title'),
      columns: [
        { label: say('packet.formula.formula'), align: 'left', share: 0.52 },
        { label: say('packet.formula.source'), align: 'left', share: 0.48 },
      ],
      rows,
    },
  ];
}

/** A source as its card names it; one of our own derivation has no title to give. */
const sayCited = ({ text, marker }: Source, { say }: PacketReader): string =>
  marker === 'computed'
    ? say('packet.formula.marker.computed')
    : say('packet.formula.cited', { text, marker: say(`packet.formula.marker.${marker}`) });
