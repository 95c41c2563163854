import * as z from 'zod';
import { watchedEvents } from '../../shared/deployment/watchedEvents.ts';
import { describeError, type Log } from '../log/log.ts';
import type { PublishedStore } from '../stores/published/published.ts';
import { readPointer } from './pointer.ts';
import { PublicationRefused, publishOnce, type Publication, type PublishDeps } from './publish.ts';

/**
 * Publishes and says how it went. A failure is one line with the event `public-page-kept`, which an alarm can watch: it
 * names who is hurt (readers of the page checked at `keptCheckedAt`, who are told not to rely on it after
 * `keptRelyUntil`) and why. The error is thrown on, so that whoever called tries again.
 */
export async function publishAndReport(deps: PublishDeps, now: Date, log: Log): Promise<Publication> {
  const started = performance.now();
  try {
    const publication = await publishOnce(deps, now);
    log({
      level: 'info',
      event: publication.outcome === 'published' ? watchedEvents.published.event : 'public-page-superseded',
      checkedAt: publication.checkedAt,
      written: publication.written.length,
      unchanged: publication.unchanged,
      milliseconds: Math.round(performance.now() - started),
    });
    if (publication.notYetShown !== null)
      log({
        level: 'warn',
        event: watchedEvents.publishedBehind.event,
        hurt: 'readers of the public page, which says that reports are missing from it',
        reports: publication.notYetShown.reports,
        since: publication.notYetShown.since,
      });
    return publication;
  } catch (error) {
    log({
      level: 'error',
      event: watchedEvents.publishRefused.event,
      hurt: 'readers of the public page, which stays as last checked',
      ...(await keptPage(deps.store)),
      reasons: reasonsOf(error),
      ...describeError(error),
    });
    throw error;
  }
}

async function keptPage(store: PublishedStore): Promise<Record<string, string | null>> {
  // The store may be what failed; not knowing is then part of the report.
  const { pointer } = await readPointer(store).catch(() => ({ pointer: null }));
  return { keptCheckedAt: pointer?.checkedAt ?? null, keptRelyUntil: pointer?.relyUntil ?? null };
}

/** Codes and paths only: a value that broke the schema may be somebody's data. */
function reasonsOf(error: unknown): string {
  if (error instanceof PublicationRefused)
    return error.problems.map(({ code, params }) => [code, ...Object.values(params)].join(' ')).join('; ');
  if (error instanceof z.ZodError)
    return error.issues.map(({ code, path }) => `${code} at ${path.join('.')}`).join('; ');
  return '';
}
