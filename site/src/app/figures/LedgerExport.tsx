import { useId, useState } from 'preact/hooks';
import { getBytes } from '../core/api.ts';
import { useWords } from '../core/words.ts';
import { saveBytes } from '../desk/Evidence.tsx';

/** Money in and out as finance books it: a CSV of journal lines, of all days or of some. */
export function LedgerExport() {
  const words = useWords();
  const id = useId();
  const [from, setFrom] = useState('');
  const [to, setTo] = useState('');
  const [state, setState] = useState<'idle' | 'reading' | 'failed' | 'ends-before'>('idle');
  const read = async (event: Event): Promise<void> => {
    event.preventDefault();
    if (from !== '' && to !== '' && to < from) {
      setState('ends-before');
      return;
    }
    setState('reading');
    const asked = new URLSearchParams({ ...(from === '' ? {} : { from }), ...(to === '' ? {} : { to }) });
    const bytes = await getBytes(`/api/ledger?${asked.toString()}`);
    setState(bytes === null ? 'failed' : 'idle');
    if (bytes) saveBytes(bytes, ['ledger', from, to].filter((part) => part !== '').join('-') + '.csv');
  };
  const day = (name: 'from' | 'to', value: string, set: (next: string) => void) => (
    <div class="field">
      <label for={`${id}-${name}`}>{words.t(`figures.ledger.${name}`)}</label>
      <input
        id={`${id}-${name}`}
        type="date"
        value={value}
        onInput={(event) => {
          set(event.currentTarget.value);
          // What was said of the days before is not of these.
          setState('idle');
        }}
      />
    </div>
  );
  return (
    <section>
      <h2>{words.t('figures.ledger')}</h2>
      <p class="soft">{words.t('figures.ledger.what')}</p>
      <form noValidate onSubmit={(event) => void read(event)}>
        {day('from', from, setFrom)}
        {day('to', to, setTo)}
        <p class="actions">
          <button type="submit" disabled={state === 'reading'}>
            {words.t('figures.ledger.download')}
          </button>
        </p>
        <div role="status">
          {state === 'failed' && <p class="warning">{words.t('desk.not-read')}</p>}
          {state === 'ends-before' && from !== '' && (
            <p class="warning">{words.t('problem.ledger-ends-before-start', { from: words.day(from) })}</p>
          )}
        </div>
      </form>
    </section>
  );
}
