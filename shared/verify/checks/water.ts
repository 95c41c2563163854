import type { PacketContent } from '../../packet/schema.ts';
import { locales } from '../../words/index.ts';
import { estimateOf, recordWaterLost, waterRecordProblems } from '../../water/record.ts';
import { OutOfRange } from '../../hydraulics/card.ts';
import { finding, type Finding } from '../finding.ts';
import { same, shown } from './same.ts';

/** The water lost: its estimate anew from what was seen, and the same figure in the record, the work and the bill. */
export function waterFindings({ waterLost, statement, basis }: PacketContent): Finding[] {
  const { waterLost: worked } = basis.work;
  const findings: Finding[] = [];
  const gallons = (path: string, file: number | null, own: number | null): void => {
    if (file !== own) findings.push(finding('water-gallons', path, { file: shown(file), own: shown(own) }));
  };
  gallons('statement.water.gallons', statement.water.gallons, worked?.gallons ?? null);
  // A figure given to the statement by hand stands on no record.
  if (waterLost && worked?.submissionId === waterLost.submissionId)
    gallons('waterLost.claimedGal', waterLost.claimedGal, worked.gallons);
  if (!waterLost?.question) return findings;

  const { question, estimate, claimedGal, challengeAnswer, basis: sentence } = waterLost;
  for (const { code, path, params } of waterRecordProblems({
    waterLostGal: claimedGal,
    question,
    estimate,
    challengeAnswer: challengeAnswer && {
      text: challengeAnswer.text,
      byWorkerId: challengeAnswer.by.workerId,
    },
  }))
    findings.push(
      code === 'water-not-of-estimate'
        ? finding('water-estimate', `waterLost.${path}`, { field: path, own: shown(params['expectedGal']) })
        : finding('not-valid', `waterLost.${path}`, { ...params, path: `waterLost.${path}`, rule: code }),
    );
  const computed = estimateOf({ question, waterLostGal: claimedGal });
  if (computed && !same(computed.challenges, waterLost.challenges))
    findings.push(
      finding('water-challenges', 'waterLost.challenges', {
        file: waterLost.challenges.length,
        own: computed.challenges.length,
      }),
    );
  const own = sentences(question);
  if (own.length > 0 && !own.some((text) => figures(text) === figures(sentence)))
    findings.push(
      finding('water-sentence', 'waterLost.basis', { file: shown(sentence), own: shown(own[0]) }),
    );
  if (!same(question.times, waterLost.times)) findings.push(finding('water-times', 'waterLost.times', {}));
  return findings;
}

/** The record's sentence in every language and system in which it may have been written. */
function sentences(question: Parameters<typeof recordWaterLost>[0]): string[] {
  try {
    return locales.flatMap((locale) =>
      (['us', 'metric'] as const).map((system) => recordWaterLost(question, { locale, system }).basis),
    );
  } catch (error) {
    if (error instanceof OutOfRange) return [];
    throw error;
  }
}

/** Its figures alone: a later edition of this program may say the same in other words. */
const figures = (text: string): string => (text.match(/\d+/g) ?? []).join(' ');
