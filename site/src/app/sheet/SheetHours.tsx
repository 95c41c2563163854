import { useWords } from '../core/words.ts';

const LINES = 4;

/** Who and what worked, from when to when, and room for the rest: what the repair form asks for beside its steps. */
export function SheetHours() {
  const words = useWords();
  return (
    <section class="sheet-hours" aria-label={words.t('sheet.hours')}>
      <table>
        <caption>{words.t('sheet.hours')}</caption>
        <thead>
          <tr>
            <th scope="col">{words.t('sheet.who-or-what')}</th>
            <th scope="col">{words.t('sheet.from')}</th>
            <th scope="col">{words.t('sheet.to')}</th>
            <th scope="col">{words.t('field.interval.breaks')}</th>
          </tr>
        </thead>
        <tbody>
          {Array.from({ length: LINES }, (_, line) => (
            <tr key={line}>
              <td />
              <td />
              <td />
              <td />
            </tr>
          ))}
        </tbody>
      </table>
      <p class="sheet-notes">{words.t('sheet.notes')}</p>
    </section>
  );
}
