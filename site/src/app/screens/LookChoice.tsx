import { useObservable } from '../core/observable.ts';
import { chooseLook, look, looks } from '../core/preferences.ts';
import { useWords } from '../core/words.ts';

/** How this device's screen looks: as the device says, light, dark, or bold black on white for the sun. */
export function LookChoice() {
  const words = useWords();
  const current = useObservable(look);
  return (
    <select
      class="look"
      aria-label={words.t('look.title')}
      value={current}
      onChange={(event) => chooseLook(looks.find((each) => each === event.currentTarget.value) ?? 'auto')}
    >
      {looks.map((each) => (
        <option key={each} value={each}>
          {`${words.t('look.title')}: ${words.t(`look.${each}`)}`}
        </option>
      ))}
    </select>
  );
}
