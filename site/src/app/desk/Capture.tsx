import type { CaptureData } from '../../../../shared/evidence/displayCopy.ts';
import {
  sayCamera,
  sayCameraPlace,
  sayCaptured,
  sayTimesDiffer,
  utcText,
  type CaptureReader,
} from '../../../../shared/evidence/sayCapture.ts';
import type { Position } from '../../../../shared/nearest/sphere.ts';
import type { Exhibit } from '../../../../shared/submissions/fields.ts';
import { useWords } from '../core/words.ts';

interface Props {
  readonly exhibit: Exhibit;
  readonly arrived: boolean;
  /** What the file says of itself; null: it was not looked at, undefined: that could not be read (yet). */
  readonly said: CaptureData | null | undefined;
  /** Where the hydrant stands; null when nobody knows. */
  readonly hydrant: Position | null;
}

/** When a photo was captured and by whose word, where, with what, and how its clocks agree: as the packet will say it. */
export function Capture({ exhibit, arrived, said, hydrant }: Props) {
  const words = useWords();
  const { takenAt, fileWrittenAt, chosenAt, mediaType } = exhibit;
  const reader: CaptureReader = { ...words, say: words.t, dateTime: words.when, utc: utcText };
  const phone = [
    ...(fileWrittenAt === undefined
      ? []
      : [words.t('desk.phone-wrote', { when: words.when(fileWrittenAt) })]),
    ...(chosenAt === undefined ? [] : [words.t('desk.phone-chose', { when: words.when(chosenAt) })]),
  ];
  if (!said) {
    const why = arrived ? 'desk.capture-unread' : 'desk.capture-awaited';
    return (
      <Lines
        lines={[
          takenAt === null
            ? words.t('desk.taken-unknown')
            : words.t('desk.taken-declared', { when: words.when(takenAt) }),
          ...phone,
          ...(mediaType === 'application/pdf' ? [] : [words.t(why)]),
        ]}
      />
    );
  }
  const times = { takenAt, cameraTime: said.cameraTime };
  const [camera, clocks] = sayCamera(
    { ...said, hasPosition: said.cameraPosition !== null },
    {
      cameraTime: said.cameraTime,
      satelliteTime: said.satelliteTime,
      fileWrittenAt: fileWrittenAt ?? null,
      chosenAt: chosenAt ?? null,
    },
    words.zone,
    reader,
  );
  const place = sayCameraPlace(said.cameraPosition, hydrant, reader);
  const differ = sayTimesDiffer(times, words.zone, reader);
  return (
    <>
      <Lines lines={[sayCaptured(times, words.zone, reader), ...(differ === null ? [] : [differ])]} />
      <details class="small">
        <summary>{words.t('desk.capture-more')}</summary>
        <Lines lines={[clocks, ...phone, place, camera]} />
      </details>
    </>
  );
}

function Lines({ lines }: { readonly lines: readonly (string | null | undefined)[] }) {
  return (
    <>
      {lines.map((line) =>
        line ? (
          <span class="block small soft" key={line}>
            {line}
          </span>
        ) : null,
      )}
    </>
  );
}
