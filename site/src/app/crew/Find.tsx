import { useObservable } from '../core/observable.ts';
import { go, route, to } from '../core/router.ts';
import { useWords } from '../core/words.ts';
import { Heading } from '../screens/Heading.tsx';
import { HydrantFinder } from '../screens/HydrantFinder.tsx';

/** Finds a hydrant, and goes on to the form that was asked for: `#/find?then=<kind>`. */
export function Find() {
  const words = useWords();
  const then = useObservable(route).query.get('then');
  const pick = (hydrantId: string): void =>
    go(then ? to(['new', then], { hydrant: hydrantId }) : to(['hydrant', hydrantId]));
  return (
    <>
      <Heading title={words.t('crew.find')}>{words.t('crew.find')}</Heading>
      {then && <p class="lead">{words.t('crew.find-then', { kind: words.t(`kind.${then}`) })}</p>}
      <p class="label" id="find-label">
        {words.t('crew.find-label')}
      </p>
      <HydrantFinder inputId="find" labelledBy="find-label" onPick={pick} />
      <p>
        <a href={to(['new', 'strike'])}>{words.t('crew.not-listed')}</a>
      </p>
    </>
  );
}
