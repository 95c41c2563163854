import { editionDayDoubts } from '../../../../shared/costs/newEdition.ts';
import { sayProblem } from '../../../../shared/words/index.ts';
import { useRateBooks } from '../core/records.ts';
import { localDay } from '../form/localTime.ts';
import { textOf } from '../form/nodes.ts';
import type { ExtraProps } from '../form/view/props.ts';
import { useScope } from '../form/view/scope.ts';

/** How the days of the draft stand to those of the editions on record, while they are typed. */
export function DayDoubts({ values }: ExtraProps) {
  const { words } = useScope();
  const known = useRateBooks().value?.editions ?? [];
  const editionId = textOf(values['editionId']).trim();
  const effectiveFrom = textOf(values['effectiveFrom']);
  const taken = known.some((edition) => edition.editionId === editionId);
  const doubts = [
    ...(taken ? [{ code: 'edition-taken', path: 'editionId', params: { editionId } }] : []),
    ...(effectiveFrom === ''
      ? []
      : editionDayDoubts(
          { editionId, effectiveFrom, effectiveTo: textOf(values['effectiveTo']) || null },
          known,
          localDay(new Date(), words.zone),
        )),
  ];
  return (
    <div role="status">
      {doubts.length > 0 && (
        <ul class="doubts">
          {doubts.map((found) => (
            <li key={found.code}>
              {sayProblem(words.locale, {
                ...found,
                params: Object.fromEntries(
                  Object.entries(found.params).map(([name, value]) => [
                    name,
                    typeof value === 'string' && /^\d{4}-\d\d-\d\d$/.test(value) ? words.day(value) : value,
                  ]),
                ),
              })}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
