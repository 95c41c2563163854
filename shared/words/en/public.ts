/** English words: public. Keys begin with the area's own prefix; Spanish must have each of them to compile. */
export const publicPages = {
  'public.skip': 'Skip to the content',
  'public.app-needs-script': 'This page needs a script to work, and your browser has scripts turned off.',
} as const;
