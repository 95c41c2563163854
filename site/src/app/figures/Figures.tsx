import type { ClaimFigures } from '../../../../shared/claimFigures/figures.ts';
import { groupings, type Grouping } from '../../../../shared/claimFigures/recovery.ts';
import { useResource } from '../core/resource.ts';
import { useWords } from '../core/words.ts';
import { Heading } from '../screens/Heading.tsx';
import { Unread } from '../screens/Unread.tsx';
import { Ageing } from './Ageing.tsx';
import { LedgerExport } from './LedgerExport.tsx';
import { LostTo } from './LostTo.tsx';
import { RecoveryTable } from './RecoveryTable.tsx';
import { Speed } from './Speed.tsx';

/** What came of the claims: how much is owed and since when, what was recovered, and what was lost to which objection. */
export function Figures() {
  const words = useWords();
  const figures = useResource<ClaimFigures>('/api/claim-figures');
  const { value } = figures;
  return (
    <>
      <Heading title={words.t('figures.title')}>{words.t('figures.title')}</Heading>
      <Unread resource={figures} />
      {value && (
        <>
          <p class="soft">{words.t('figures.as-of', { day: words.day(value.today) })}</p>
          {value.whole.claims === 0 ? (
            <p>{words.t('figures.none')}</p>
          ) : (
            <>
              <Whole figures={value} />
              <Ageing aged={value.ageing} />
              <LostTo lost={value.lost} />
              {groupings.map((grouping: Grouping) => (
                <RecoveryTable key={grouping} grouping={grouping} rows={value.by[grouping]} />
              ))}
              <Speed speed={value.speed} />
            </>
          )}
          <LedgerExport />
        </>
      )}
    </>
  );
}

function Whole({ figures: { whole } }: { readonly figures: ClaimFigures }) {
  const words = useWords();
  const percent = new Intl.NumberFormat(words.locale, { style: 'percent', maximumFractionDigits: 1 });
  const facts: readonly (readonly [string, string])[] = [
    ['figures.billed', words.money(whole.billedCents)],
    ['figures.recovered', words.money(whole.recoveredCents)],
    ['figures.share', whole.share === null ? '—' : percent.format(whole.share)],
    ['figures.written-off', words.money(whole.writtenOffCents)],
    ['figures.balance', words.money(whole.balanceCents)],
    // Seldom, and then billed does not add up without them.
    ...(whole.passedOnCents > 0 ? [['figures.passed-on', words.money(whole.passedOnCents)] as const] : []),
    ...(whole.overpaidCents > 0 ? [['figures.overpaid', words.money(whole.overpaidCents)] as const] : []),
  ];
  return (
    <dl class="glance">
      {facts.map(([key, text]) => (
        <div key={key}>
          <dt>{words.t(key)}</dt>
          <dd>{text}</dd>
        </div>
      ))}
    </dl>
  );
}
