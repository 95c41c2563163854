import type { WithdrawnEdition } from '../../../../shared/costs/editionsOnRecord.ts';
import { nameOf, people } from '../core/people.ts';
import { useObservable } from '../core/observable.ts';
import { to } from '../core/router.ts';
import { useWords } from '../core/words.ts';
import { Heading } from '../screens/Heading.tsx';
import { daysOf } from './daysOf.ts';
import { EditionView } from './EditionView.tsx';

interface Props {
  readonly withdrawn: WithdrawnEdition;
}

/** An edition that was taken back, as it was: a packet that was issued by it may still be asked about. */
export function Withdrawn({ withdrawn }: Props) {
  const words = useWords();
  const { edition } = withdrawn;
  return (
    <>
      <p class="trail">
        <a href="#/">{words.t('shell.desk')}</a> / <a href="#/rates">{words.t('rates.title')}</a>
      </p>
      <Heading title={edition.title}>{edition.title}</Heading>
      <p class="lead">
        <span class="tag out">{words.t('rates.withdrawn')}</span> {edition.editionId} ·{' '}
        {daysOf(edition, words)}
      </p>
      <p>
        <By withdrawn={withdrawn} />
      </p>
      <p>{words.t('rates.withdrawn.kept')}</p>
      <EditionView edition={edition} />
    </>
  );
}

export function WithdrawnList({ withdrawn }: { readonly withdrawn: readonly WithdrawnEdition[] }) {
  const words = useWords();
  if (withdrawn.length === 0) return null;
  return (
    <section>
      <h2>{words.t('rates.withdrawn.list')}</h2>
      <ul class="plain-list lines">
        {withdrawn.map((each) => (
          <li key={each.submissionId}>
            <a href={to(['rates', each.editionId])}>{each.edition.title}</a> · {each.editionId}
            <br />
            <span class="small soft">
              <By withdrawn={each} />
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function By({ withdrawn: { withdrawnBy, withdrawnAt, reason } }: Props) {
  const words = useWords();
  useObservable(people);
  return (
    <>{words.t('rates.withdrawn.by', { who: nameOf(withdrawnBy), when: words.when(withdrawnAt), reason })}</>
  );
}
