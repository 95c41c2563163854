import { useEffect, useState } from 'preact/hooks';
import type { EvidenceAddress } from '../../../../shared/evidence/address.ts';
import type { CaptureData, Undisplayable } from '../../../../shared/evidence/displayCopy.ts';
import { MOST_DISPLAYED_BYTES, MOST_HEIF_PIXELS, MOST_PIXELS } from '../../../../shared/evidence/limits.ts';
import type { Position } from '../../../../shared/nearest/sphere.ts';
import type { Exhibit } from '../../../../shared/submissions/fields.ts';
import { bytesAt, getJson, getOriginal } from '../core/api.ts';
import { useWords } from '../core/words.ts';
import { Capture } from './Capture.tsx';

interface Props {
  readonly exhibits: readonly Exhibit[];
  readonly states: Readonly<Record<string, 'awaited' | 'arrived'>>;
  /** Where the hydrant stands, by the inventory: how far from it a camera says it was. */
  readonly hydrant: Position | null;
}

/** Photos and documents: what arrived, drawn small; what is declared and still awaited, said so. */
export function Evidence({ exhibits, states, hydrant }: Props) {
  const words = useWords();
  if (exhibits.length === 0) return <p>{words.t('missing.photos')}</p>;
  return (
    <ul class="plain-list exhibits">
      {exhibits.map((exhibit) => (
        <li key={exhibit.sha256}>
          <ExhibitCard exhibit={exhibit} arrived={states[exhibit.sha256] === 'arrived'} hydrant={hydrant} />
        </li>
      ))}
    </ul>
  );
}

interface CardProps {
  readonly exhibit: Exhibit;
  readonly arrived: boolean;
  readonly hydrant: Position | null;
}

function ExhibitCard({ exhibit, arrived, hydrant }: CardProps) {
  const words = useWords();
  const [said, setSaid] = useState<CaptureData | null>();
  const view = words.t(`value.view.${exhibit.view}`);
  const isPicture = exhibit.mediaType !== 'application/pdf';
  return (
    <figure>
      {arrived && isPicture ? (
        <Picture sha256={exhibit.sha256} alt={exhibit.caption ?? view} onSaid={setSaid} />
      ) : (
        <p class="no-picture">{words.t(arrived ? 'desk.document' : 'desk.awaited')}</p>
      )}
      <figcaption>
        <strong>{view}</strong>
        {!arrived && <span class="tag out">{words.t('desk.awaited')}</span>}
        {exhibit.caption && <span class="block">{exhibit.caption}</span>}
        <Capture exhibit={exhibit} arrived={arrived} said={said} hydrant={hydrant} />
        <span class="block small soft hash">SHA-256 {exhibit.sha256.slice(0, 16)}…</span>
        {arrived && <OpenButton sha256={exhibit.sha256} what={view} />}
      </figcaption>
    </figure>
  );
}

/** What a browser can draw of a picture, or why there is nothing. */
async function readToShow(
  sha256: string,
  onSaid: (said: CaptureData | null) => void,
): Promise<Blob | 'failed' | Undisplayable> {
  const answer = await getJson<EvidenceAddress>(`/api/evidence/${sha256}?as=display`);
  if (answer.outcome !== 'ok') return 'failed';
  onSaid(answer.value.said);
  // What the server would not unpack is not handed to the browser to unpack.
  return answer.value.undisplayable ?? (await bytesAt(answer.value)) ?? 'failed';
}

interface PictureProps {
  readonly sha256: string;
  readonly alt: string;
  /** Told what the file says of its capture, when that is read. */
  readonly onSaid: (said: CaptureData | null) => void;
}

/** Its display copy, or, until that is made, the original; a type that the browser cannot draw is said. */
function Picture({ sha256, alt, onSaid }: PictureProps) {
  const words = useWords();
  const [url, setUrl] = useState<string | null>(null);
  const [state, setState] = useState<'reading' | 'drawn' | 'failed' | 'undrawable' | Undisplayable>(
    'reading',
  );
  useEffect(() => {
    let made: string | null = null;
    let gone = false;
    const tell = (said: CaptureData | null): void => {
      if (!gone) onSaid(said);
    };
    void readToShow(sha256, tell).then((found) => {
      if (gone) return;
      if (typeof found === 'string') {
        setState(found);
        return;
      }
      made = URL.createObjectURL(found);
      setUrl(made);
      setState('drawn');
    });
    return () => {
      gone = true;
      if (made) URL.revokeObjectURL(made);
    };
  }, [sha256, onSaid]);
  if (state === 'drawn' && url)
    return <img src={url} alt={alt} loading="lazy" onError={() => setState('undrawable')} />;
  return (
    <p class="no-picture" role={state === 'reading' ? 'status' : undefined}>
      {words.t(notDrawn[state], shownUpTo)}
    </p>
  );
}

const shownUpTo = {
  megabytes: MOST_DISPLAYED_BYTES / 1e6,
  megapixels: MOST_PIXELS / 1e6,
  heicMegapixels: MOST_HEIF_PIXELS / 1e6,
};
const notDrawn = {
  reading: 'screen.reading',
  // Between the bytes and their address.
  drawn: 'screen.reading',
  failed: 'desk.not-read',
  undrawable: 'desk.undrawable',
  document: 'desk.document',
  corrupt: 'desk.undisplayable.corrupt',
  'hash-differs': 'desk.undisplayable.corrupt',
  'too-large': 'desk.undisplayable.too-large',
  'too-slow': 'desk.undisplayable.too-slow',
} as const;

/** Fetches the original and hands it over; a file that has not arrived yet is said. */
export function OpenButton({ sha256, what }: { readonly sha256: string; readonly what: string }) {
  const words = useWords();
  const [failed, setFailed] = useState(false);
  const open = async (): Promise<void> => {
    const bytes = await getOriginal(sha256);
    setFailed(bytes === null);
    if (bytes) saveBytes(bytes, sha256.slice(0, 12));
  };
  return (
    <>
      <button type="button" class="link" onClick={() => void open()}>
        {words.t('desk.download-original')}
        <span class="visually-hidden"> {what}</span>
      </button>
      {failed && <span role="alert">{words.t('desk.not-read')}</span>}
    </>
  );
}

const endings: Readonly<Record<string, string>> = {
  'image/jpeg': 'jpg',
  'image/png': 'png',
  'image/webp': 'webp',
  'image/heic': 'heic',
  'image/heif': 'heif',
  'application/pdf': 'pdf',
  'application/zip': 'zip',
};

/** Hands bytes to the browser's own download, under a name that says what they are. */
export function saveBytes(bytes: Blob, name: string): void {
  const url = URL.createObjectURL(bytes);
  const link = document.createElement('a');
  link.href = url;
  const ending = endings[bytes.type];
  link.download = ending ? `${name}.${ending}` : name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
