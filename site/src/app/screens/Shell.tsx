import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';
import { locales } from '../../../../shared/words/index.ts';
import { useObservable } from '../core/observable.ts';
import { chooseLocale, chooseUnits } from '../core/preferences.ts';
import { isCurrent, session } from '../core/session.ts';
import { utility } from '../core/utility.ts';
import { useWords } from '../core/words.ts';
import { LookChoice } from './LookChoice.tsx';
import { NewerVersion } from './NewerVersion.tsx';
import { UnsentBanner } from './UnsentBanner.tsx';

interface Props {
  readonly area: 'crew' | 'desk' | 'sign-in';
  readonly children: ComponentChildren;
}

/** The frame of every screen: where one is, language and units, who is signed in, and what has not been sent. */
export function Shell({ area, children }: Props) {
  const words = useWords();
  const current = useObservable(session);
  const facts = useObservable(utility);
  const main = useRef<HTMLElement>(null);
  const skip = (event: Event): void => {
    event.preventDefault();
    main.current?.focus();
  };
  return (
    <div class={`app ${area}`}>
      <a class="skip" href="#main" onClick={skip}>
        {words.t('shell.skip')}
      </a>
      <header class="app-header">
        <div class="app-bar">
          <p class="app-name">
            <a href={area === 'sign-in' ? '/' : '#/'}>{words.t(`shell.${area}`)}</a>
            {facts && <span>{facts.name}</span>}
          </p>
          <Switches />
          {area === 'desk' && <LookChoice />}
        </div>
        <nav class="app-nav" aria-label={words.t('shell.areas')}>
          <a href="/crew/" aria-current={area === 'crew' ? 'page' : undefined}>
            {words.t('shell.crew')}
          </a>
          {current?.roles.some((role) => role !== 'crew') && (
            <a href="/desk/" aria-current={area === 'desk' ? 'page' : undefined}>
              {words.t('shell.desk')}
            </a>
          )}
          <a href="/">{words.t('shell.public')}</a>
          <span class="who">
            {current ? (
              <a href="/sign-in/">{current.name}</a>
            ) : (
              <a href="/sign-in/">{words.t('shell.sign-in')}</a>
            )}
          </span>
        </nav>
      </header>
      <main id="main" tabIndex={-1} ref={main}>
        {current && !isCurrent(current) && area !== 'sign-in' && <SignInAgain />}
        {area === 'crew' && <NewerVersion />}
        <UnsentBanner area={area} />
        {children}
      </main>
    </div>
  );
}

function Switches() {
  const words = useWords();
  return (
    <div class="switches">
      <fieldset>
        <legend class="visually-hidden">{words.t('shell.language')}</legend>
        {locales.map((locale) => (
          <button
            type="button"
            key={locale}
            lang={locale}
            aria-pressed={words.locale === locale}
            onClick={() => chooseLocale(locale)}
          >
            {words.t(`shell.language.${locale}`)}
          </button>
        ))}
      </fieldset>
      <fieldset>
        <legend class="visually-hidden">{words.t('shell.units')}</legend>
        {(['us', 'metric'] as const).map((system) => (
          <button
            type="button"
            key={system}
            aria-pressed={words.system === system}
            onClick={() => chooseUnits(system)}
          >
            {words.t(`shell.units.${system}`)}
          </button>
        ))}
      </fieldset>
    </div>
  );
}

function SignInAgain() {
  const words = useWords();
  return (
    <div class="notice" role="status">
      <p>
        <strong>{words.t('shell.sign-in-again')}</strong> {words.t('shell.nothing-lost')}
      </p>
      <p>
        <a class="button" href="/sign-in/">
          {words.t('shell.sign-in')}
        </a>
      </p>
    </div>
  );
}
