import type { Finding } from '../../../../../shared/damage/finding.ts';
import { findingWords } from '../../../../../shared/damage/words.ts';
import type { Wording } from '../../core/words.ts';

/** A finding in the words of the form that asked for it: `Lower barrel: Damaged`. */
export function sayFinding(finding: Finding, { t }: Wording): string {
  const { label, value } = findingWords(finding);
  return t('damage.finding', { thing: t(label), value: t(value) });
}

export function sayFrom({ source }: Finding, words: Wording): string {
  return 'submissionId' in source
    ? words.t('damage.from.record', { kind: words.t(`kind.${source.kind}`), when: words.when(source.at) })
    : words.t('damage.from.inventory');
}

/** Findings with the records they are from, each record named once. */
export function sayFindings(findings: readonly Finding[], words: Wording): string {
  const bySource = new Map<string, string[]>();
  for (const finding of findings) {
    const from = sayFrom(finding, words);
    bySource.set(from, [...(bySource.get(from) ?? []), sayFinding(finding, words)]);
  }
  return [...bySource].map(([from, said]) => `${said.join('; ')} (${from})`).join(' · ');
}
