import { render } from 'preact';
import { useRef, useState } from 'preact/hooks';
import { sayFinding } from '../../../shared/verify/finding.ts';
import { sayChecked, saySignature, sayVerdict } from '../../../shared/verify/say.ts';
import { say, type Locale, type WordKey } from '../../../shared/words/index.ts';
import { loadAllWords } from '../app/words/load.ts';
import { answer, withFiles, type Answer, type Handed } from './handed.ts';

type State =
  | { readonly is: 'waiting' | 'working' }
  | { readonly is: 'answered'; readonly answer: Answer }
  | { readonly is: 'failed'; readonly reason: string };

/** Takes a packet by choosing or dropping, and says what it says of itself. */
function Verify({ locale }: { readonly locale: Locale }) {
  const t = (key: WordKey, params = {}): string => say(locale, key, params);
  const [files, setFiles] = useState<readonly Handed[]>([]);
  const [state, setState] = useState<State>({ is: 'waiting' });
  const [over, setOver] = useState(false);
  // What was handed in meanwhile makes an earlier answer one of other files.
  const turn = useRef(0);

  const look = async (made: (old: readonly Handed[]) => Promise<Handed[]>): Promise<void> => {
    const mine = (turn.current += 1);
    setState({ is: 'working' });
    try {
      const handed = await made(files);
      if (mine !== turn.current) return;
      setFiles(handed);
      const found = await answer(handed);
      if (mine === turn.current) setState(found ? { is: 'answered', answer: found } : { is: 'waiting' });
    } catch (error) {
      if (mine === turn.current) setState({ is: 'failed', reason: String(error) });
    }
  };
  const take = (list: FileList | null | undefined): void => {
    const taken = [...(list ?? [])];
    if (taken.length > 0) void look((old) => withFiles(old, taken));
  };

  return (
    <>
      <div
        class={`drop ${over ? 'over' : ''}`}
        onDragOver={(event) => {
          event.preventDefault();
          setOver(true);
        }}
        onDragLeave={() => setOver(false)}
        onDrop={(event) => {
          event.preventDefault();
          setOver(false);
          take(event.dataTransfer?.files);
        }}
      >
        <p id="drop-how">{t('verify.page.drop')}</p>
        <p class="choose">
          <input
            id="files"
            type="file"
            multiple
            accept=".pdf,.zip,.jws,.json,application/pdf,application/zip"
            aria-describedby="drop-how"
            onChange={(event) => {
              take(event.currentTarget.files);
              // So that the same file, changed, can be chosen again.
              event.currentTarget.value = '';
            }}
          />
          <label class="button primary" for="files">
            {t('verify.page.choose')}
          </label>
        </p>
      </div>
      {files.length > 0 && (
        <ul class="handed" aria-label={t('verify.page.chosen')}>
          {files.map((file) => (
            <li key={file.name}>
              <span>
                <strong>{file.name}</strong> <span class="soft">{t(`verify.page.kind.${file.kind}`)}</span>
              </span>
              <button
                type="button"
                aria-label={t('verify.page.remove', { name: file.name })}
                onClick={() => void look(async (old) => old.filter((other) => other !== file))}
              >
                <span aria-hidden="true">×</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      <div role="status">
        {state.is === 'working' && <p>{t('verify.page.working')}</p>}
        {state.is === 'waiting' && files.length > 0 && <p>{t('verify.page.need-pdf')}</p>}
        {state.is === 'failed' && <p>{t('verify.page.fault', { reason: state.reason })}</p>}
        {state.is === 'answered' && <Found locale={locale} {...state.answer} />}
      </div>
    </>
  );
}

function Found({ locale, found, keysOnline }: Answer & { readonly locale: Locale }) {
  const t = (key: WordKey): string => say(locale, key);
  const { outcome, findings, remarks, signature } = found;
  return (
    <section class="answer" data-outcome={outcome}>
      <h2 class="verdict">{sayVerdict(locale, found)}</h2>
      {findings.length > 0 && (
        <>
          {outcome !== 'unreadable' && <h3>{t('verify.page.findings')}</h3>}
          <ol class={outcome === 'unreadable' ? 'plain' : ''}>
            {findings.map((each, index) => (
              <li key={index}>{sayFinding(locale, each)}</li>
            ))}
          </ol>
        </>
      )}
      {remarks.length > 0 && (
        <ul class="plain">
          {remarks.map((each, index) => (
            <li key={index}>{sayFinding(locale, each)}</li>
          ))}
        </ul>
      )}
      {outcome !== 'unreadable' && (
        <>
          <h3>{t('verify.page.what')}</h3>
          <p>{saySignature(locale, found)}</p>
          {keysOnline && signature.state !== 'none' && <p>{t('verify.page.keys-online')}</p>}
        </>
      )}
      {sayChecked(locale, found).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {outcome !== 'unreadable' && <p class="small soft">{t('verify.limits')}</p>}
    </section>
  );
}

const root = document.getElementById('verify');
const locale: Locale = document.documentElement.lang === 'es' ? 'es' : 'en';
// A packet is written in the utility's language and read in the reader's: both are needed, and all of both.
if (root)
  void Promise.all([loadAllWords('en'), loadAllWords('es')]).then(() => {
    root.replaceChildren();
    render(<Verify locale={locale} />, root);
  });
// A file that misses its place must not take the page away.
for (const kind of ['dragover', 'drop'] as const)
  window.addEventListener(kind, (event) => event.preventDefault());
