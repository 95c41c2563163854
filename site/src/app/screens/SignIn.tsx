import '../core/noEval.ts';
import { render } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { useObservable } from '../core/observable.ts';
import { isCurrent, session, signIn, startSession } from '../core/session.ts';
import { finishSignIn, goAndSignIn, leaveAltogether, staySignedIn } from '../core/signingIn.ts';
import { loadUtility, loadWords, utility } from '../core/utility.ts';
import { useWords } from '../core/words.ts';
import { forgetPeople } from '../core/people.ts';
import { forgetReads } from '../offline/reads.ts';
import { forgetReceipts, refresh } from '../outbox/outbox.ts';
import { Heading } from './Heading.tsx';
import { Shell } from './Shell.tsx';

/** The server that `npm start` runs, which has a page of its own to sign in as anybody; a deployment is never there. */
const isThisMachine = ['localhost', '127.0.0.1', '[::1]'].includes(location.hostname);

/** Takes a sign-in link or its code, says who is signed in, and signs out. Nothing that was typed is touched. */
function SignIn() {
  const words = useWords();
  const current = useObservable(session);
  const [code, setCode] = useState('');
  const [wrong, setWrong] = useState(false);
  const [failed, setFailed] = useState<'refused' | 'unreachable' | null>(null);
  const at = useObservable(utility)?.signIn ?? null;
  useEffect(() => {
    void loadUtility();
    void cameBack.then((how) => {
      if (how === 'refused' || how === 'unreachable') setFailed(how);
    });
  }, []);
  const take = (event: Event): void => {
    event.preventDefault();
    // The whole link may be pasted, or the part after `#token=`.
    setWrong(!signIn(code.replace(/^.*#token=/, '')));
  };
  const valid = current !== null && isCurrent(current);
  /** What waits to be sent, and unfinished forms, stay for their author; what was read goes. */
  const leave = (): void => {
    if (current) void forgetReceipts(current.personId).catch(() => undefined);
    forgetPeople();
    void forgetReads(null);
    void leaveAltogether();
  };
  return (
    <Shell area="sign-in">
      <Heading title={words.t('shell.sign-in')}>{words.t('shell.sign-in')}</Heading>
      {current && (
        <>
          <p class="lead">
            {words.t(valid ? 'sign-in.as' : 'sign-in.was', { name: current.name })}{' '}
            {current.roles.map((role) => words.t(`value.role.${role}`)).join(', ')}
          </p>
          {!valid && <p>{words.t('shell.nothing-lost')}</p>}
          {valid && (
            <p class="actions">
              <a class="button primary" href="/crew/">
                {words.t('shell.crew')}
              </a>
              {current.roles.some((role) => role !== 'crew') && (
                <a class="button primary" href="/desk/">
                  {words.t('shell.desk')}
                </a>
              )}
            </p>
          )}
          <p>
            <button type="button" onClick={leave}>
              {words.t('sign-in.out')}
            </button>
          </p>
        </>
      )}
      {!valid && failed && (
        <p class="error" role="alert">
          {words.t(failed === 'refused' ? 'sign-in.not-taken' : 'sign-in.no-answer')}
        </p>
      )}
      {!valid && at && (
        <p class="actions">
          <button type="button" class="primary" onClick={() => void goAndSignIn(at)}>
            {words.t('sign-in.go')}
          </button>
        </p>
      )}
      {!valid && !at && (
        <form noValidate onSubmit={take}>
          <p>{words.t('sign-in.how')}</p>
          {isThisMachine && (
            <p>
              <a href="/local/sign-in">{words.t('sign-in.local')}</a>
            </p>
          )}
          <div class={`field ${wrong ? 'invalid' : ''}`}>
            <label for="code">{words.t('sign-in.code')}</label>
            {wrong && (
              <p class="error" id="code-error">
                {words.t('sign-in.wrong')}
              </p>
            )}
            <input
              id="code"
              autocomplete="off"
              spellcheck={false}
              value={code}
              aria-invalid={wrong ? 'true' : undefined}
              aria-describedby={wrong ? 'code-error' : undefined}
              onInput={(event) => setCode(event.currentTarget.value)}
            />
          </div>
          <button type="submit" class="primary">
            {words.t('shell.sign-in')}
          </button>
        </form>
      )}
    </Shell>
  );
}

startSession();
const cameBack = finishSignIn();
staySignedIn();
void refresh().catch(() => undefined);
const root = document.getElementById('root');
if (!root) throw new Error('the page has no root');
void loadWords(false).then(() => {
  root.textContent = '';
  render(<SignIn />, root);
});
