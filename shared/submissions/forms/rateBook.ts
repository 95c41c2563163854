import { rateBookEdition } from '../../costs/rateBook.ts';
import { form } from '../form.ts';

/** An edition of the rate book. A later edition never edits an earlier one. */
export const rateBook = form({
  kind: 'rate-book',
  subjects: ['utility'],
  writers: ['manager'],
  readers: ['clerk', 'manager'],
  personal: [],
  body: rateBookEdition,
});
