import { freshness } from '../../../shared/public/freshness.ts';

/**
 * Turns the page into a loud warning once it is too old. The times themselves stand in the HTML for those without
 * script; this adds what the device's clock says, and says so, because a device's clock can be wrong.
 */
const root = document.documentElement;
const { checkedAt = '', relyUntil = '', timeZone = 'UTC', staleMark = '' } = root.dataset;

const CHECK_EVERY_MS = 10_000;

const title = document.title;
const banner = document.querySelector<HTMLElement>('#stale');
const reasons = {
  old: banner?.querySelector<HTMLElement>('[data-reason="old"]'),
  early: banner?.querySelector<HTMLElement>('[data-reason="early"]'),
};

function deviceTime(now: Date): string {
  const options = {
    timeZone,
    weekday: 'short',
    month: 'short',
    day: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
    timeZoneName: 'short',
  } as const;
  return new Intl.DateTimeFormat(`${root.lang}-US`, options).format(now);
}

function judge(): void {
  const now = new Date();
  const state = freshness(now, { checkedAt, relyUntil });
  const [old, early] = [state === 'old', state === 'early'];
  const doubtful = old || early;
  root.classList.toggle('stale', doubtful);
  document.title = doubtful ? `${staleMark} · ${title}` : title;
  if (!banner) return;
  for (const time of banner.querySelectorAll('time[data-device]')) {
    time.textContent = deviceTime(now);
    time.setAttribute('datetime', now.toISOString());
  }
  reasons.old?.toggleAttribute('hidden', !old);
  reasons.early?.toggleAttribute('hidden', old || !early);
  // Unhidden last and once, so that a screen reader announces it whole and does not repeat it.
  if (banner.hidden === doubtful) banner.hidden = !doubtful;
}

judge();
setInterval(judge, CHECK_EVERY_MS);
// A page taken out of a pocket or out of the back-and-forward cache is judged before it is read.
document.addEventListener('visibilitychange', judge);
window.addEventListener('pageshow', judge);
