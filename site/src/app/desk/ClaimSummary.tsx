import type { ClaimState } from '../../../../shared/claims/state.ts';
import type { StrikeState } from '../../../../shared/strikes/state.ts';
import type { useObjections, useStatement } from '../core/records.ts';
import { useWords } from '../core/words.ts';
import { ageDays } from './age.ts';
import { showPart } from './places.ts';

interface Props {
  readonly claim: ClaimState;
  readonly strike: StrikeState | null;
  readonly statement: ReturnType<typeof useStatement>;
  readonly objections: ReturnType<typeof useObjections>;
}

/** The claim at a glance: how far it is, how old, what it comes to, and what is still open. Each figure leads to its part. */
export function ClaimSummary({ claim, strike, statement, objections }: Props) {
  const words = useWords();
  const open = objections.value?.objections.filter(({ answered }) => answered === null) ?? null;
  const most = open?.reduce((cents, { atStakeCents }) => Math.max(cents, atStakeCents), 0) ?? 0;
  const figures = [
    {
      to: 'statement',
      label: words.t('claim.statement'),
      text: statement.value
        ? words.money(statement.value.totalCents)
        : words.t(statement.failed ? 'desk.not-read' : 'screen.reading'),
      more:
        statement.value && !statement.value.complete
          ? words.t('claim.summary.incomplete')
          : claim.money.askedCents > 0
            ? words.t('claim.summary.demanded', { amount: words.money(claim.money.askedCents) })
            : words.t('claim.summary.not-demanded'),
    },
    {
      to: 'objections',
      label: words.t('objections.title'),
      text:
        open === null
          ? words.t(objections.failed ? 'desk.not-read' : 'screen.reading')
          : words.t('objections.count', { count: open.length }),
      more: most > 0 ? words.t('objections.most', { amount: words.money(most) }) : '',
    },
    ...(claim.money.askedCents > 0
      ? [
          {
            to: 'life',
            label: words.t('claim.life.money.balance'),
            text: words.money(claim.money.balanceCents),
            more: words.t('claim.summary.paid', { amount: words.money(claim.money.paidCents) }),
          },
        ]
      : []),
    {
      to: claim.packets.length > 0 ? 'life' : 'packet',
      label: words.t(claim.packets.length > 0 ? 'claim.summary.stands' : 'claim.packet'),
      text: words.t(claim.packets.length > 0 ? `standing.${claim.life.standing}` : 'claim.summary.no-packet'),
      more: strike ? words.t('claim.summary.age', { days: ageDays(strike.since) }) : '',
    },
  ];
  return (
    <dl class="glance">
      {figures.map(({ to, label, text, more }) => (
        <div key={label}>
          <dt>
            <button type="button" class="link" onClick={() => showPart(to)}>
              {label}
            </button>
          </dt>
          <dd>
            <strong>{text}</strong>
            {more && <span class="block small soft">{more}</span>}
          </dd>
        </div>
      ))}
    </dl>
  );
}
