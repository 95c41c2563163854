import type { ClaimAnswer } from '../../core/records.ts';
import { to } from '../../core/router.ts';
import { useWords } from '../../core/words.ts';
import { Story } from '../../screens/Story.tsx';
import { Contact } from './Contact.tsx';
import { Cuts } from './Cuts.tsx';
import { Deadlines } from './Deadlines.tsx';
import { Money } from './Money.tsx';
import { LifeWarnings } from './LifeWarnings.tsx';
import { Papers } from './Papers.tsx';
import { NextSteps } from './NextSteps.tsx';

/** What went before needs no word of its own: a claim that is disputed was sent. */
const isNews = (standing: string): boolean =>
  !['packet-issued', 'demand-sent', 'acknowledged'].includes(standing);

/** The claim after its packet: what is next, by when, what became of the money, and everything that happened. */
export function Life({ answer }: { readonly answer: ClaimAnswer }) {
  const words = useWords();
  const { claim, others, history } = answer;
  const days = new Map(claim.life.events.map(({ submissionId, on }) => [submissionId, on]));
  return (
    <section id="life" tabIndex={-1} class="life">
      <h2>{words.t(claim.packets.length > 0 ? 'claim.life.title' : 'claim.life.title-open')}</h2>
      <p class="standing">
        <strong class="tag">{words.t(`standing.${claim.life.standing}`)}</strong>{' '}
        {[
          ...claim.life.also.filter(isNews).map((each) => ({ key: each, said: words.t(`standing.${each}`) })),
          ...claim.life.flags.map((each) => ({ key: each, said: words.t(`claim-flag.${each}`) })),
        ].map(({ key, said }) => (
          <span key={key} class="tag">
            {said}
          </span>
        ))}
      </p>
      <LifeWarnings answer={answer} />
      <h3>{words.t('claim.life.next')}</h3>
      <NextSteps claim={claim} />
      <Deadlines claimId={claim.claimId} />
      <Contact contact={answer.contact ?? null} />
      <h3>{words.t('claim.life.money')}</h3>
      <Money money={claim.money} />
      {others.length > 0 && (
        <p class="small">
          {words.t('claim.life.others')}{' '}
          {others.map((other) => (
            <a key={other.claimId} href={to(['claim', other.claimId])}>
              {words.t('claim.life.other', {
                claimNumber: other.claimNumber,
                amount: words.money(other.money.askedCents),
                paid: words.money(other.money.paidCents),
              })}{' '}
            </a>
          ))}
        </p>
      )}
      <Cuts claim={claim} />
      <h3>{words.t('claim.life.happened')}</h3>
      <Story
        history={history}
        from={['claim', claim.claimId]}
        days={days}
        papers={(submission) => <Papers submission={submission} />}
      />
    </section>
  );
}
