import * as z from 'zod';

const address = z.email({ pattern: z.regexes.html5Email });

/**
 * The link that writes to `said`; null where no mail program would take it (the check of HTML's `input type=email`). An
 * address may hold `?` and `&`, which in a link would name further people: they are encoded (RFC 6068, section 2).
 */
export const mailto = (said: string | null): string | null =>
  said !== null && address.safeParse(said).success
    ? `mailto:${said.split('@').map(encodeURIComponent).join('@')}`
    : null;
