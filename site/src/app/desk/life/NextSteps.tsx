import { nextSteps } from '../../../../../shared/claims/nextSteps.ts';
import type { ClaimState } from '../../../../../shared/claims/state.ts';
import { to } from '../../core/router.ts';
import { useWords } from '../../core/words.ts';

/** What is likely next, as buttons; everything else that may happen behind one touch. */
export function NextSteps({ claim }: { readonly claim: ClaimState }) {
  const words = useWords();
  const { likely, others } = nextSteps(claim);
  const link = (kind: string, cls: string) => (
    <a key={kind} class={cls} href={to(['new', kind], { claim: claim.claimId })}>
      {words.t(`form.title.${kind}`)}
    </a>
  );
  return (
    <>
      {likely.length > 0 && (
        <p class="actions">
          {likely.map((kind, index) => link(kind, index === 0 ? 'button primary' : 'button'))}
        </p>
      )}
      <details class="next-others">
        <summary>{words.t('claim.life.something-else')}</summary>
        <ul class="plain-list">
          {others.map((kind) => (
            <li key={kind}>{link(kind, '')}</li>
          ))}
        </ul>
      </details>
    </>
  );
}
