import { useEffect, useState } from 'preact/hooks';
import { cameraClockMs } from '../../../../../shared/audit/cameraClock.ts';
import { SAME_CLOCK_MS } from '../../../../../shared/evidence/clocks.ts';
import { focusSoon } from '../../core/focus.ts';
import { readFile } from '../../outbox/outbox.ts';
import { takePhoto, type PhotoFault } from '../../outbox/photos.ts';
import { writeLocalTime } from '../localTime.ts';
import { rowsOf, textOf, type Values } from '../nodes.ts';
import { wordsOf } from '../words.ts';
import { PhotoSaid } from './PhotoSaid.tsx';
import { ListProblems } from './ListProblems.tsx';
import type { ListProps } from './props.ts';
import { fieldId, useScope } from './scope.ts';

interface Fault {
  readonly name: string;
  readonly code: PhotoFault | 'photo-twice' | 'photo-too-many';
}

/** Chosen or taken here, hashed on the device, declared with the form; the bytes follow when the form is recorded. */
export function PhotosList({ list, path, value, set }: ListProps) {
  const { Fields, spec, words } = useScope();
  const rows = rowsOf(value);
  const key = wordsOf(spec.kind, list, path);
  const [busy, setBusy] = useState(false);
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  const id = fieldId(path);

  /** The camera's time, unless it is one that has not come yet: that clock is wrong, and nobody should have to notice. */
  const takenAt = (cameraTime: string | null, chosenAt: string): string => {
    const ms = cameraClockMs(cameraTime, words.zone);
    return ms === null || ms > Date.parse(chosenAt) + SAME_CLOCK_MS
      ? ''
      : writeLocalTime(new Date(ms).toISOString(), words.zone);
  };
  const add = async (files: readonly File[]): Promise<void> => {
    setBusy(true);
    const next: Values[] = [...rows];
    const wrong: Fault[] = [];
    for (const file of files) {
      if (next.length >= list.atMost) {
        wrong.push({ name: file.name, code: 'photo-too-many' });
        continue;
      }
      const taken = await takePhoto(file);
      if (!taken.ok) wrong.push({ name: file.name, code: taken.code });
      else if (next.some((row) => row['sha256'] === taken.sha256))
        wrong.push({ name: file.name, code: 'photo-twice' });
      else {
        const { read, fileWrittenAt, chosenAt } = taken;
        next.push({
          sha256: taken.sha256,
          bytes: taken.bytes,
          mediaType: taken.mediaType,
          fileWrittenAt: fileWrittenAt ?? '',
          chosenAt,
          // What a photo shows is for whoever took it to say.
          view: taken.mediaType === 'application/pdf' ? 'document' : '',
          takenAt: takenAt(read?.exif.cameraTime ?? null, chosenAt),
          caption: '',
          ...(read ? { _read: JSON.stringify(read) } : {}),
        });
      }
    }
    set(next);
    setFaults(wrong);
    setBusy(false);
  };

  return (
    <div class="rows" id={id} tabIndex={-1}>
      <ListProblems list={list} path={path} />
      {rows.map((row, index) => {
        const title = words.t(`${key}.item`, { number: index + 1 });
        return (
          <fieldset class="row photo" key={textOf(row['sha256'])} id={fieldId(`${path}.${index}`)}>
            <legend>{title}</legend>
            <Thumbnail sha256={textOf(row['sha256'])} alt={title} mediaType={textOf(row['mediaType'])} />
            <PhotoSaid row={row} />
            <Fields
              nodes={list.item}
              values={row}
              base={`${path}.${index}`}
              change={(next) => set(rows.map((each, at) => (at === index ? next : each)))}
            />
            <button
              type="button"
              class="link"
              onClick={() => {
                set(rows.filter((_row, at) => at !== index));
                focusSoon(`#${id}-file`);
              }}
            >
              {words.t('form.remove')}
              <span class="visually-hidden"> {title}</span>
            </button>
          </fieldset>
        );
      })}
      {faults.map(({ name, code }) => (
        <p class="error" key={name + code} role="alert">
          {words.t(`photo.fault.${code}`, { name })}
        </p>
      ))}
      <label class="button plain file" for={`${id}-file`}>
        {words.t(busy ? 'form.photo-reading' : `${key}.add`)}
        <input
          id={`${id}-file`}
          type="file"
          multiple
          accept="image/jpeg,image/png,image/webp,image/heic,image/heif,application/pdf,.heic,.heif"
          onChange={(event) => {
            const input = event.currentTarget;
            void add([...(input.files ?? [])]).then(() => {
              // The same file may be chosen again after it was removed.
              input.value = '';
            });
          }}
        />
      </label>
    </div>
  );
}

/** A small picture from the device's own copy; a document or a type the browser cannot draw is named instead. */
export function Thumbnail({
  sha256,
  alt,
  mediaType,
}: {
  readonly sha256: string;
  readonly alt: string;
  readonly mediaType: string;
}) {
  const { words } = useScope();
  const [url, setUrl] = useState<string | null>(null);
  const [undrawable, setUndrawable] = useState(mediaType === 'application/pdf');
  useEffect(() => {
    let made: string | null = null;
    let gone = false;
    void readFile(sha256).then((bytes) => {
      if (gone || !bytes) return;
      made = URL.createObjectURL(bytes);
      setUrl(made);
    });
    return () => {
      gone = true;
      if (made) URL.revokeObjectURL(made);
    };
  }, [sha256]);
  if (undrawable)
    return <p class="no-picture">{words.t('form.no-picture', { type: mediaType.split('/')[1] ?? '' })}</p>;
  return url ? <img class="thumbnail" src={url} alt={alt} onError={() => setUndrawable(true)} /> : null;
}
