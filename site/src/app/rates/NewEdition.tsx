import { useEffect } from 'preact/hooks';
import { newId } from '../core/device.ts';
import { draftsOf, keepDraft } from '../core/drafts.ts';
import { useObservable } from '../core/observable.ts';
import { useRateBooks } from '../core/records.ts';
import { replaceWith, to } from '../core/router.ts';
import { session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import { localDay } from '../form/localTime.ts';
import { rateBookSpec } from '../form/specs/rateBook.ts';
import { editionValues } from '../form/specs/rateBookBody.ts';
import { NotFound } from '../screens/NotFound.tsx';
import { Unread } from '../screens/Unread.tsx';

/**
 * Opens the editor with a copy of an edition: everything as it is, without its id, from today on. A draft of an edition
 * that this person has begun is gone on with: two half-finished rate books would be one too many.
 */
export function NewEdition({ fromId }: { readonly fromId: string }) {
  const words = useWords();
  const authorId = useObservable(session)?.personId ?? '';
  const books = useRateBooks();
  const from = books.value?.editions.find(({ editionId }) => editionId === fromId);

  useEffect(() => {
    if (!from) return;
    const begun = draftsOf(authorId).find(({ kind, corrects }) => kind === 'rate-book' && !corrects);
    if (begun) {
      replaceWith(to(['form', begun.submissionId]));
      return;
    }
    const submissionId = newId();
    const now = new Date();
    keepDraft({
      submissionId,
      kind: 'rate-book',
      subject: { type: 'utility' },
      authorId,
      openedAt: now.toISOString(),
      touched: false,
      values: {
        ...editionValues(rateBookSpec.nodes, from, words.zone),
        editionId: '',
        // Two editions of one title could not be told apart.
        title: '',
        effectiveFrom: localDay(now, words.zone),
        effectiveTo: '',
      },
      about: { hydrantId: null, strikeId: null },
    });
    replaceWith(to(['form', submissionId]));
  }, [from]);

  if (books.value && !from) return <NotFound />;
  return books.value ? <p role="status">{words.t('form.opening')}</p> : <Unread resource={books} />;
}
