import { freshness } from '../../../../shared/public/freshness.ts';
import { instantParts } from '../../../../shared/public/times.ts';
import { pageLocale, pageWords } from '../pageWords.ts';
import { adopt, askAgain, type Wall } from './renew.ts';
import { turning } from './turn.ts';

/** Renews the wall in place, says how old it is by this screen's clock, and shouts when it must not be relied on. */
const RENEW_EVERY_MS = 30_000;
const JUDGE_EVERY_MS = 5000;
/** One answer that stays away is a hiccup; after this it is said. */
const GONE_AFTER_MS = 75_000;
/** How long something new on the list is marked as new. */
const NEW_FOR_MS = 15 * 60_000;

const one = <T extends HTMLElement>(selector: string): T => {
  const found = document.querySelector<T>(selector);
  if (!found) throw new Error(`the wall has no ${selector}`);
  return found;
};
const root = document.documentElement;
const locale = pageLocale();
const say = pageWords(one<HTMLTemplateElement>('#wall-words'));
const state = one('[data-state]');
let title = document.title;
/** When it last answered, and, once it does not, the first time that it did not. */
let answeredAt = Date.now();
let silentSince: number | null = null;
const newSince = new Map<string, number>();
const turn = turning(say);

function instant(at: string): string {
  const times = { timeZone: root.dataset['timeZone'] ?? 'UTC', locale };
  return say('instant', instantParts(at, times, root.dataset['checkedAt'] ?? at));
}

/** What stands on the banner: nothing when all is well. Written only when it changes, so that it is announced once. */
function banner(lines: { title: string; why: string; more: string } | null): void {
  if (lines)
    for (const [name, text] of Object.entries({ title: lines.title, why: lines.why, more: lines.more })) {
      const line = one(`[data-state-${name}]`);
      if (line.textContent !== text) line.textContent = text;
    }
  if (state.hidden === (lines === null)) return;
  state.hidden = lines === null;
  // It takes room from the list.
  turn.lay();
}

function judge(): void {
  const now = new Date();
  const { checkedAt = '', relyUntil = '' } = root.dataset;
  const age = freshness(now, { checkedAt, relyUntil });
  const gone = silentSince !== null && now.getTime() - answeredAt > GONE_AFTER_MS;
  const times = { checked: instant(checkedAt), until: instant(relyUntil) };
  const since = instant(new Date(silentSince ?? answeredAt).toISOString());
  root.classList.toggle('stale', age !== 'good');
  root.classList.toggle('gone', gone);
  if (age === 'old')
    banner({
      title: say('old.title'),
      why: say('old.why', times),
      more: gone ? say('old.gone', { since }) : say('old.alive', times),
    });
  else if (age === 'early')
    banner({
      title: say('old.title'),
      why: say('early.why', times),
      more: gone ? say('old.gone', { since }) : '',
    });
  else if (gone) banner({ title: say('gone.title'), why: say('gone.why', { ...times, since }), more: '' });
  else banner(null);
  const mark = age !== 'good' ? say('mark') : gone ? say('mark-gone') : null;
  document.title = mark === null ? title : `${mark} · ${title}`;
  tick(now);
}

function tick(now: Date): void {
  const clock = one<HTMLTimeElement>('[data-now]');
  clock.textContent = instant(now.toISOString());
  clock.dateTime = now.toISOString();
  one('.wall-now').hidden = false;
  for (const entry of document.querySelectorAll<HTMLElement>('[data-entry]')) {
    const at = newSince.get(entry.dataset['entry'] ?? '');
    const tag = entry.querySelector<HTMLElement>('.wall-new');
    if (tag) tag.hidden = at === undefined || now.getTime() - at > NEW_FOR_MS;
  }
  // This script is alive: the five minutes of the style's own warning begin anew.
  const stopped = one('[data-stopped]');
  stopped.replaceWith(stopped.cloneNode(true));
}

const namesOf = (wall: ParentNode): string[] =>
  [...wall.querySelectorAll<HTMLElement>('[data-entry]')].map(({ dataset }) => dataset['entry'] ?? '');

function renewed(wall: Wall): void {
  const before = new Set(namesOf(document));
  adopt(wall);
  title = wall.document.title;
  const fresh = namesOf(document).filter((name) => !before.has(name));
  for (const name of fresh) newSince.set(name, Date.now());
  if (fresh.length > 0)
    one('[data-news]').textContent = say(fresh.length === 1 ? 'announce.one' : 'announce.more', {
      names: fresh.join(', '),
    });
  turn.lay();
}

let asking = false;
async function renew(): Promise<void> {
  if (asking) return;
  asking = true;
  try {
    const wall = await askAgain();
    answeredAt = Date.now();
    silentSince = null;
    if (wall === 'other-build') window.location.reload();
    else if (wall !== 'same') renewed(wall);
  } catch {
    // Whatever it was, the wall has not been renewed, and that is all that a watch needs to know.
    silentSince ??= Date.now();
  } finally {
    asking = false;
    judge();
  }
}

judge();
turn.lay();
// Letters of another face are of another width.
void document.fonts.ready.then(() => {
  turn.lay();
});
setInterval(judge, JUDGE_EVERY_MS);
setInterval(() => void renew(), RENEW_EVERY_MS);
window.addEventListener('online', () => void renew());
window.addEventListener('offline', () => void renew());
document.addEventListener('visibilitychange', () => void renew());
window.addEventListener('resize', () => {
  turn.lay();
});
