import { buildEdition, type PublicSources } from '../../shared/public/build.ts';
import { shouldServe } from '../../shared/inventory/hydrant.ts';
import type { PublicEdition } from '../../shared/public/edition.ts';
import { mayStand } from '../../shared/public/freshness.ts';
import {
  inventoryProblems,
  vanishedOutages,
  withdrawnPages,
  type Vanished,
} from '../../shared/public/guard.ts';
import { publicSnapshot, type PublicSnapshot } from '../../shared/public/snapshot.ts';
import { problem, type Problem } from '../../shared/problems/problem.ts';
import type { UtilitySettings } from '../../shared/utility/settings.ts';
import type { PublishedStore } from '../stores/published/published.ts';
import {
  assetsIn,
  gonePages,
  pagesOf,
  renderPage,
  SNAPSHOT_KEY,
  snapshotFile,
  type PageToRender,
  type PublishedFile,
} from './pages.ts';
import { feedFiles, readFeedMemory, type FeedFiles } from './feeds.ts';
import { assetWriter } from './assets.ts';
import { mapFiles } from './mapFiles.ts';
import { announce, isAsNew, moveForward, readPointer, type Pointer } from './pointer.ts';
import type { SiteRenderer } from './renderer.ts';
import { sha256, writeFile } from './write.ts';

export interface PublishDeps {
  readonly settings: UtilitySettings;
  /** The whole current state. Throws when any part of it cannot be read; never answers empty because of a fault. */
  readonly readSources: (checkedAt: string) => Promise<PublicSources>;
  /** Whether the ledger still holds an outage that no projection knows (false: a correction withdrew it). */
  readonly stillRecorded: (vanished: Vanished) => Promise<boolean>;
  readonly renderer: SiteRenderer;
  readonly store: PublishedStore;
}

export interface Publication {
  /** `superseded`: a page of the same check or a newer one stands, and stays. */
  readonly outcome: 'published' | 'superseded';
  readonly checkedAt: string;
  readonly written: readonly string[];
  readonly unchanged: number;
  /** Reports that the page says are missing from it; null when none is. */
  readonly notYetShown: NonNullable<PublicSnapshot['notYetShown']> | null;
}

/** What was read must not replace the page that stands; each problem says why. */
export class PublicationRefused extends Error {
  override readonly name = 'PublicationRefused';
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    super(problems.map(({ code }) => code).join(', '));
    this.problems = problems;
  }
}

/** A clock this far behind the standing page would hold back every page of this publisher without a word. */
const CLOCK_TOLERANCE_MS = 60_000;
/** Writes under way at once. */
const AT_ONCE = 32;

/**
 * Publishes the current state: reads it whole, builds and checks what the public may know, renders every page, writes
 * what changed, moves the pointer. `now` is taken before anything is read, so a page says "checked" of no instant
 * whose facts it lacks. Safe to run several at once.
 *
 * Whatever fails, the last good page stays: nothing is written before everything was read and checked, each file is
 * replaced whole, and none by an older one.
 *
 * @throws PublicationRefused when what was read is not fit to be published; StoreUnavailable; ZodError from the schema.
 */
export async function publishOnce(deps: PublishDeps, now: Date): Promise<Publication> {
  const { settings, store } = deps;
  const checkedAt = now.toISOString();
  const seen = await readPointer(store);
  assertClock(seen.pointer, now);
  if (isAsNew(seen.pointer, checkedAt)) return superseded(checkedAt);

  const previous = await readPrevious(store);
  const sources = await deps.readSources(checkedAt);
  await refuseBadNews(deps, previous, sources);
  const edition = buildEdition(sources, settings, checkedAt);
  const feeds = feedFiles(edition, await readFeedMemory(store), settings);

  const hydrants = edition.hydrants.map(({ hydrantId }) => hydrantId);
  const announced = await announce(store, { checkedAt, hydrants }, seen);
  const { pointer: standing } = announced.standing;
  // A newer one may have come by while this one read. Its pages must not be taken for those that this one may replace.
  if (isAsNew(standing, checkedAt)) return superseded(checkedAt);
  const made = pagesOf(edition, withdrawnPages(standing, hydrants));
  const gone = gonePages(edition, Object.keys(standing.files), made);
  const pages = { lists: made.lists, others: [...made.others, ...gone] };
  const { files, written, unchanged } = await writeEdition(
    deps,
    edition,
    { ...pages, ...feeds },
    {
      files: standing.files,
      keeps: ({ shows, checkedAt: since }, wanted) =>
        announced.sure &&
        shows === wanted &&
        since !== undefined &&
        mayStand(since, now, settings.publishing),
    },
  );
  const { relyUntil, notYetShown = null } = edition.snapshot;
  const moved = await moveForward(store, { version: 1, checkedAt, relyUntil, files, hydrants }, announced);
  return { outcome: moved ? 'published' : 'superseded', checkedAt, written, unchanged, notYetShown };
}

const superseded = (checkedAt: string): Publication => ({
  outcome: 'superseded',
  checkedAt,
  written: [],
  unchanged: 0,
  notYetShown: null,
});

type StandingFile = Pointer['files'][string];

const utf8 = new TextEncoder();
const digest = (shows: unknown): string => sha256(utf8.encode(JSON.stringify(shows)));

function assertClock({ checkedAt }: Pointer, now: Date): void {
  if (checkedAt !== null && Date.parse(checkedAt) - now.getTime() > CLOCK_TOLERANCE_MS)
    throw new PublicationRefused([problem('clock-behind', '', { now: now.toISOString(), checkedAt })]);
}

/** The snapshot that stands. One that cannot be read as such is no reason to stop: it is about to be replaced. */
async function readPrevious(store: PublishedStore): Promise<PublicSnapshot | null> {
  const object = await store.get(SNAPSHOT_KEY);
  if (!object) return null;
  try {
    const { note: _note, ...snapshot } = JSON.parse(new TextDecoder().decode(object.bytes)) as Record<
      string,
      unknown
    >;
    return publicSnapshot.safeParse(snapshot).data ?? null;
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}

async function refuseBadNews(
  { stillRecorded }: PublishDeps,
  previous: PublicSnapshot | null,
  { inventory, statuses, strikes }: PublicSources,
): Promise<void> {
  const serving = inventory && { serving: inventory.hydrants.filter(shouldServe).length };
  const problems = [...inventoryProblems(previous, serving)];
  for (const vanished of vanishedOutages(previous, statuses, strikes))
    if (await stillRecorded(vanished))
      problems.push(problem('outage-vanished', 'outOfService', { outageId: vanished.outageId }));
  if (problems.length > 0) throw new PublicationRefused(problems);
}

interface WrittenEdition {
  readonly files: Pointer['files'];
  readonly written: readonly string[];
  readonly unchanged: number;
}

interface Standing {
  readonly files: Pointer['files'];
  /** Whether a page may be left as it stands: what it would show is the same, and it is young enough. */
  readonly keeps: (there: StandingFile, shows: string) => boolean;
}

async function writeEdition(
  { renderer, store }: PublishDeps,
  edition: PublicEdition,
  { others, lists, feeds, memory }: ReturnType<typeof pagesOf> & FeedFiles,
  standing: Standing,
): Promise<WrittenEdition> {
  const { checkedAt } = edition.snapshot;
  // A page that is left as it stands names assets of its own build, which this one may not have.
  const files: Record<string, StandingFile> = Object.fromEntries(
    Object.entries(standing.files).filter(([key]) => key.startsWith('_assets/')),
  );
  const written: string[] = [];
  let unchanged = 0;
  const write = async (file: PublishedFile, shows?: string): Promise<void> => {
    const result = await writeFile(store, file, standing.files[file.key]);
    if (result.outcome === 'newer-stands') return;
    const { sha256, etag } = result;
    files[file.key] = { sha256, etag, ...(shows === undefined ? {} : { shows, checkedAt }) };
    if (result.outcome === 'written') written.push(file.key);
    else unchanged++;
  };

  const writeAssets = assetWriter(renderer, write);
  const publishPage = async (page: PageToRender): Promise<void> => {
    const shows = page.shows === undefined ? undefined : digest(page.shows);
    const there = standing.files[page.key];
    if (there !== undefined && shows !== undefined && standing.keeps(there, shows)) {
      files[page.key] = there;
      unchanged++;
      return;
    }
    const file = await renderPage(renderer, page);
    await writeAssets(assetsIn(new TextDecoder().decode(file.bytes)));
    await write(file, shows);
  };
  for (let start = 0; start < others.length; start += AT_ONCE)
    await Promise.all(others.slice(start, start + AT_ONCE).map(publishPage));
  const writeAll = async (all: readonly PublishedFile[]): Promise<void> => {
    for (let start = 0; start < all.length; start += AT_ONCE)
      await Promise.all(all.slice(start, start + AT_ONCE).map((file) => write(file)));
  };
  for (const page of lists) await publishPage(page);
  const map = mapFiles(edition, Object.keys(standing.files));
  await writeAll([snapshotFile(edition), ...feeds, ...map.cells]);
  // After the cells that it names.
  await write(map.index);
  for (const file of memory) await write(file);
  return { files, written, unchanged };
}
