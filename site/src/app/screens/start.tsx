import { render, type ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { photosInDrafts, restoreDrafts, sweepDrafts } from '../core/drafts.ts';
import { readSoon } from '../core/later.ts';
import { useObservable } from '../core/observable.ts';
import { forgetPeople, loadPeople } from '../core/people.ts';
import { forgetResources } from '../core/resource.ts';
import { route, startRouter } from '../core/router.ts';
import { session, startSession } from '../core/session.ts';
import { staySignedIn } from '../core/signingIn.ts';
import { loadUtility, loadUtilityWords, loadWords, utility } from '../core/utility.ts';
import { loadForms } from '../form/specs/byKind.ts';
import { loadAllWords } from '../words/load.ts';
import { preferences } from '../core/preferences.ts';
import { useWords } from '../core/words.ts';
import { startOffline } from '../offline/app.ts';
import { lookAtDurability } from '../offline/durable.ts';
import { forgetLists, refreshLists } from '../offline/lists.ts';
import { forgetNearby, refreshNearby, startNearby } from '../offline/nearby.ts';
import { forgetReads, keepReads, sweepReads } from '../offline/reads.ts';
import { refresh, sweepFiles } from '../outbox/outbox.ts';
import { startSending } from '../outbox/send.ts';
import { Heading } from './Heading.tsx';
import { NotFound } from './NotFound.tsx';
import { EntryScreen } from './EntryScreen.tsx';
import { FormScreen } from './FormScreen.tsx';
import { lazyScreen } from './lazyScreen.tsx';
import { NewForm } from './NewForm.tsx';
import { Shell } from './Shell.tsx';

export type Screens = Readonly<Record<string, ComponentType>>;

/** Screens that both apps have. */
const common: Screens = {
  new: NewForm,
  form: FormScreen,
  correct: lazyScreen(async () => (await import('./CorrectForm.tsx')).CorrectForm),
  network: lazyScreen(async () => (await import('./NetworkScreen.tsx')).NetworkScreen),
};
const OutboxScreen = lazyScreen(async () => (await import('./OutboxScreen.tsx')).OutboxScreen);

interface AppProps {
  readonly area: 'crew' | 'desk';
  readonly screens: Screens;
  /** Who may use this app; everybody else is told, and the server holds it. */
  readonly allowed: (roles: readonly string[]) => boolean;
}

function App({ area, screens, allowed }: AppProps) {
  const words = useWords();
  const current = useObservable(session);
  const facts = useObservable(utility);
  const at = useObservable(route);
  const [tried, setTried] = useState(false);
  useEffect(() => {
    void loadUtility().then(() => setTried(true));
  }, []);

  const [name = ''] = at.parts;
  const Screen =
    name === 'outbox'
      ? at.parts.length > 1
        ? EntryScreen
        : OutboxScreen
      : (common[name] ?? screens[name] ?? NotFound);
  return (
    <Shell area={area}>
      {!facts ? (
        <p role="status">{words.t(tried ? 'screen.first-time-offline' : 'screen.reading')}</p>
      ) : !current ? (
        <SignedOut area={area} />
      ) : !allowed(current.roles) ? (
        <>
          <Heading title={words.t('screen.not-yours')}>{words.t('screen.not-yours')}</Heading>
          <p>{words.t(`screen.not-yours.${area}`)}</p>
        </>
      ) : (
        <Screen key={at.path} />
      )}
    </Shell>
  );
}

function SignedOut({ area }: { readonly area: 'crew' | 'desk' }) {
  const words = useWords();
  return (
    <>
      <Heading title={words.t(`shell.${area}`)}>{words.t('screen.sign-in')}</Heading>
      <p>{words.t('screen.sign-in-more')}</p>
      <p>
        <a class="button primary" href="/sign-in/">
          {words.t('shell.sign-in')}
        </a>
      </p>
    </>
  );
}

/** The app itself, what its screens read, and the hydrants around, on this device. */
function openWithNoSignal(): void {
  keepReads();
  // What somebody else read here before goes first.
  void forgetReads(session.get()?.personId ?? null)
    .then(() => sweepReads(Date.now()))
    .catch(() => undefined);
  startOffline();
  window.addEventListener('online', () => {
    void refreshNearby();
    void refreshLists();
  });
  void startNearby();
  void refreshLists();
}

/** The first screen has the line to itself for this long. */
const REST_AFTER_MS = 1_500;

/** A database that another tab holds up must not keep a strike from being reported. */
const DRAFTS_WAIT_MS = 1_000;

/** Mounts an app on its prerendered page. */
export function start(props: AppProps): void {
  startSession();
  staySignedIn();
  startRouter();
  const restored = restoreDrafts();
  sweepDrafts(new Date());
  let person = session.get()?.personId;
  session.subscribe(() => {
    // A token renewed by the same person leaves on screen what is there.
    if (session.get()?.personId !== person) {
      forgetResources();
      forgetPeople();
      void loadPeople();
      void forgetReads(session.get()?.personId ?? null);
      forgetNearby();
      forgetLists();
      if (props.area === 'crew') {
        void startNearby();
        void refreshLists();
      }
    }
    person = session.get()?.personId;
  });
  // A browser that keeps no database still shows everything; what cannot be kept is said where it matters.
  void Promise.all([refresh(), restored])
    .then(() => sweepFiles(photosInDrafts()))
    .catch(() => undefined);
  void loadPeople();
  void lookAtDurability();
  startSending();
  if (props.area === 'crew') openWithNoSignal();
  const root = document.getElementById('root');
  if (!root) throw new Error('the page has no root');
  const patience = new Promise((resolve) => setTimeout(resolve, DRAFTS_WAIT_MS));
  void Promise.all([loadWords(props.area === 'desk'), Promise.race([restored, patience])]).then(() => {
    root.textContent = '';
    render(<App {...props} />, root);
    // Everything else that is said, once the first screen stands.
    setTimeout(() => {
      void loadAllWords(preferences.get().locale);
      void loadUtilityWords();
      void loadForms().then(readSoon);
    }, REST_AFTER_MS);
  });
}
