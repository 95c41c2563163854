import { useState } from 'preact/hooks';
import { numberInCode } from '../../../../shared/inventory/tag.ts';
import { useJobCodes } from '../core/records.ts';
import { useWords } from '../core/words.ts';
import { withPart, type KnownPart } from '../form/scannedPart.ts';
import type { ExtraProps } from '../form/view/props.ts';
import { lazy } from '../form/view/Lazy.tsx';
import { mayScan } from './detector.ts';

const Scanner = lazy(async () => (await import('./Scanner.tsx')).Scanner);

interface Props extends ExtraProps {
  /** What the hydrant's model and the shelves say; the rate book's list comes after them. */
  readonly known: readonly KnownPart[];
}

/** Parts into the list by the codes on their bags and boxes, one after the other. */
export function ScanPart({ values, change, known }: Props) {
  const words = useWords();
  const listed = useJobCodes().value?.stock ?? [];
  const [scanning, setScanning] = useState(false);
  const [said, setSaid] = useState('');
  if (!mayScan()) return <p class="help">{words.t('scan.none.part')}</p>;

  const take = (code: string): void => {
    setScanning(false);
    const { parts, partNumber, description, quantity, is } = withPart(values, code, [
      ...known,
      ...listed.map(({ code: number, title }) => ({ partNumber: number, description: title, places: [] })),
    ]);
    setSaid(
      is === 'more'
        ? words.t('scan.part-more', { part: partNumber, quantity: quantity ?? '?' })
        : is === 'added'
          ? words.t('scan.part-added', { part: partNumber, description })
          : words.t('scan.part-unknown', { part: partNumber }),
    );
    change({ ...values, parts });
  };
  return (
    <div>
      <p role="status" class="said-now strong">
        {said}
      </p>
      {scanning ? (
        <Scanner
          title={words.t('scan.title.part')}
          read={numberInCode}
          onCode={take}
          onClose={() => setScanning(false)}
        />
      ) : (
        <p>
          <button type="button" class="plain" onClick={() => setScanning(true)}>
            {words.t(said === '' ? 'scan.part' : 'scan.another')}
          </button>
        </p>
      )}
    </div>
  );
}
