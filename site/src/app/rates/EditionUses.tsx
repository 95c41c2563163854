import { editionUse } from '../../../../shared/costs/editionUse.ts';
import type { EditionRecord } from '../../../../shared/costs/editionsOnRecord.ts';
import { useRateBooks, useStrikes } from '../core/records.ts';
import { to } from '../core/router.ts';
import { useWords } from '../core/words.ts';
import { localDay } from '../form/localTime.ts';
import { Unread } from '../screens/Unread.tsx';

/** Who an edition's withdrawal touches: packets that keep its figures, and bills that change. */
export function EditionUses({ record }: { readonly record: EditionRecord }) {
  const words = useWords();
  const books = useRateBooks();
  const strikes = useStrikes();
  if (!books.value || !strikes.value) return <Unread resource={books.value ? strikes : books} />;
  const { packets, bills } = editionUse(
    record,
    books.value.editions,
    strikes.value.claims ?? [],
    strikes.value.strikes,
    words.zone,
    localDay(new Date(), words.zone),
  );
  return (
    <div class="cautions">
      {packets.length === 0 && bills.length === 0 && <p>{words.t('rates.withdraw.unused')}</p>}
      {bills.length > 0 && (
        <>
          <p>
            <strong>{words.t('rates.withdraw.bills', { count: bills.length })}</strong>
          </p>
          <ul>
            {[...new Set(bills.map(({ insteadId }) => insteadId))].map((instead) => (
              <li key={instead}>
                {instead === null
                  ? words.t('rates.withdraw.no-other')
                  : words.t('rates.withdraw.other', { editionId: instead })}{' '}
                <Claims claims={bills.filter(({ insteadId }) => insteadId === instead)} />
              </li>
            ))}
          </ul>
        </>
      )}
      {packets.length > 0 && (
        <>
          <p>
            <strong>{words.t('rates.withdraw.packets', { count: packets.length })}</strong>
          </p>
          <p>
            <Claims claims={packets} />
          </p>
        </>
      )}
    </div>
  );
}

interface Named {
  readonly claimId: string;
  readonly claimNumber: string;
  readonly revision?: number;
}

function Claims({ claims }: { readonly claims: readonly Named[] }) {
  const words = useWords();
  return (
    <>
      {claims.map(({ claimId, claimNumber, revision }, index) => (
        <span key={`${claimId}.${revision ?? ''}`}>
          {index > 0 && ', '}
          <a href={to(['claim', claimId])}>{claimNumber}</a>
          {revision !== undefined && ` (${words.t('rates.withdraw.revision', { revision })})`}
        </span>
      ))}
    </>
  );
}
