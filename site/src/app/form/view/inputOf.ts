/** What stands in the field that an event came from. */
export const inputOf = (event: Event): string =>
  (event.currentTarget as HTMLInputElement | HTMLTextAreaElement).value;
