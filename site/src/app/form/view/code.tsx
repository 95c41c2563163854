import { recalled } from '../../core/recall.ts';
import { useJobCodes } from '../../core/records.ts';
import { textOf } from '../nodes.ts';
import { wordsOf } from '../words.ts';
import { FieldShell } from './FieldShell.tsx';
import type { PropsOf } from './props.ts';
import { useScope } from './scope.ts';

/** A list of more is found by typing, not by scrolling. */
const MOST_TO_SCROLL = 60;

interface Props extends PropsOf<'text'> {
  readonly codes: { readonly of: 'labor' | 'machines' | 'stock'; readonly titleTo?: string };
}

/**
 * A code of the rate book: chosen from the list of today, or typed. A code that the list lacks is kept as it is; the work
 * may be of another day, and the desk sees what has no rate.
 */
export function CodeField({ leaf, path, value, change, level, codes }: Props) {
  const { spec, words } = useScope();
  const list = useJobCodes().value?.[codes.of] ?? [];
  const text = textOf(value);
  const scrolled = list.length > 0 && list.length <= MOST_TO_SCROLL;
  const known = list.find(({ code }) => code === text.trim());
  const before = recalled(wordsOf(spec.kind, leaf, path)).filter(
    (each) => !list.some(({ code }) => code === each),
  );
  const choose = (next: string): void => {
    const found = list.find(({ code }) => code === next.trim());
    const { titleTo } = codes;
    const beside = titleTo === undefined ? '' : textOf(level[titleTo]).trim();
    // What somebody wrote stays; what the list put in comes and goes with the code.
    const free = beside === '' || list.some(({ title }) => title === beside);
    change({
      [leaf.name]: next,
      ...(titleTo !== undefined && free ? { [titleTo]: found?.title ?? '' } : {}),
    });
  };
  return (
    <FieldShell leaf={leaf} path={path}>
      {(described) => (
        <>
          {scrolled && (
            <select
              class="choose-code"
              aria-label={words.t('code.choose')}
              value={known?.code ?? ''}
              onChange={(event) => event.currentTarget.value !== '' && choose(event.currentTarget.value)}
            >
              <option value="">{words.t('code.choose-none')}</option>
              {list.map(({ code, title }) => (
                <option key={code} value={code}>
                  {`${title} (${code})`}
                </option>
              ))}
            </select>
          )}
          <input
            {...described}
            type="text"
            class="code"
            value={text}
            onInput={(event) => choose(event.currentTarget.value)}
            autocomplete="off"
            autocapitalize="characters"
            spellcheck={false}
            list={`${described.id}-list`}
          />
          <datalist id={`${described.id}-list`}>
            {list.map(({ code, title }) => (
              <option key={code} value={code} label={title} />
            ))}
            {before.map((each) => (
              <option key={each} value={each} />
            ))}
          </datalist>
          {known && !scrolled && <p class="help">{known.title}</p>}
          {!known && text.trim() !== '' && list.length > 0 && (
            <p class="help">{words.t('code.not-listed')}</p>
          )}
        </>
      )}
    </FieldShell>
  );
}
