import { standingWater, waterStanding } from '../../water/standing.ts';
import { rule, when, type Rule } from '../case.ts';
import { bodies, ofSection, sumCents } from '../reading.ts';

/** Water: whether any was lost, how it was measured, and whether a hydrant could give it. */
export const waterRules: readonly Rule[] = [
  rule('water-though-valve-held', 'water-lost', ({ facts, statement }) => {
    const figures = bodies(facts, 'water-lost').filter(({ waterLostGal }) => waterLostGal > 0);
    return when(statement.water.state === 'valve-held' && figures.length > 0, () => ({ atStakeCents: 0 }));
  }),
  rule('water-seen-though-valve-held', 'strike', ({ facts }) =>
    when(waterStanding(facts).contradicted, () => ({ atStakeCents: 0 })),
  ),
  rule('water-without-times', 'water-lost', (audited) => {
    const billed = ofSection(audited, 'water');
    const last = standingWater(audited.facts)?.fact.body;
    return when(
      billed.length > 0 &&
        last !== undefined &&
        last.method !== 'metered' &&
        (last.flowingFrom === null || last.flowingTo === null),
      () => ({ atStakeCents: sumCents(billed) }),
    );
  }),
  rule('water-estimate-though-metered', 'water-lost', (audited) => {
    const figures = bodies(audited.facts, 'water-lost');
    const last = standingWater(audited.facts)?.fact.body;
    return when(
      last !== undefined && last.method !== 'metered' && figures.some(({ method }) => method === 'metered'),
      () => ({ atStakeCents: sumCents(ofSection(audited, 'water')) }),
    );
  }),
  rule('water-above-hydrant', 'water-lost', (audited) => {
    const billed = ofSection(audited, 'water');
    const above = waterStanding(audited.facts).challenges.find(({ code }) => code.startsWith('water-above-'));
    return when(billed.length > 0 && above !== undefined, () => ({
      atStakeCents: sumCents(billed),
      params: {
        by: above?.code.slice('water-above-'.length) ?? '',
        percent: Math.round((100 * Number(above?.params['flowGpm'])) / Number(above?.params['limitGpm'])),
      },
    }));
  }),
  rule('water-best-figure-chosen', 'water-lost', (audited) => {
    const billed = ofSection(audited, 'water');
    const { estimate } = waterStanding(audited.facts);
    if (!estimate || billed.length === 0) return [];
    const { lowGal, claim } = estimate;
    return when(claim.waterGal > lowGal, () => ({
      atStakeCents: Math.round(sumCents(billed) * (1 - lowGal / claim.waterGal)),
      params: { figure: claim.figure, percent: Math.round((100 * claim.waterGal) / Math.max(lowGal, 1)) },
    }));
  }),
];
