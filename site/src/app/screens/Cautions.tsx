import { useWords } from '../core/words.ts';

/** Cautions by kind of work, where they are needed: before the first field. They defer to local codes and manuals. */
const cautions: Readonly<Record<string, readonly string[]>> = {
  strike: ['traffic', 'lines', 'water'],
  outage: ['traffic', 'water'],
  'valve-operation': ['traffic', 'valve'],
  repair: ['traffic', 'lines', 'pressure'],
  'flow-test': ['traffic', 'stream', 'slowly'],
};

export function Cautions({ kind }: { readonly kind: string }) {
  const words = useWords();
  const listed = cautions[kind];
  if (!listed) return null;
  return (
    <aside class="cautions" aria-label={words.t('caution.title')}>
      <ul>
        {listed.map((caution) => (
          <li key={caution}>{words.t(`caution.${caution}`)}</li>
        ))}
      </ul>
      <p class="small">{words.t('caution.codes')}</p>
    </aside>
  );
}
