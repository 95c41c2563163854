import { useEffect, useRef, useState } from 'preact/hooks';
import { useWords } from '../core/words.ts';
import { detector, type Detector } from './detector.ts';

interface Props {
  readonly title: string;
  /** What a code's text says, or null for one that says nothing of use. */
  readonly read: (text: string) => string | null;
  readonly onCode: (code: string) => void;
  readonly onClose: () => void;
}

type State = 'starting' | 'looking' | 'denied' | 'failed';

/** Between two looks at the picture: quick to a hand that holds a phone, and easy on its battery. */
const EVERY_MS = 150;

/** A lamp is no part of the standard's types yet; Chrome on Android has it. */
type Lamp = MediaTrackCapabilities & { readonly torch?: boolean };

const capabilitiesOf = (track: MediaStreamTrack | null): Lamp | undefined =>
  (track as Partial<MediaStreamTrack> | null)?.getCapabilities?.();

/** Felt through a glove; not every device can. */
const shake = (): void => {
  (navigator as Partial<Navigator>).vibrate?.(60);
};

/**
 * The camera, until a code is read or it is closed. It is drawn after a touch that asked for it, so that is when the
 * browser asks for the camera. Pictures go nowhere: the browser reads them here, and none is kept.
 */
export function Scanner({ title, read, onCode, onClose }: Props) {
  const words = useWords();
  const box = useRef<HTMLDivElement>(null);
  const video = useRef<HTMLVideoElement>(null);
  const track = useRef<MediaStreamTrack | null>(null);
  const [state, setState] = useState<State>('starting');
  const [unreadable, setUnreadable] = useState<string | null>(null);
  const [lamp, setLamp] = useState<'none' | 'off' | 'on'>('none');
  // The latest of what the owner passed; the camera itself starts once.
  const owner = useRef({ read, onCode, onClose });
  owner.current = { read, onCode, onClose };

  useEffect(() => {
    // Above the bar at the foot, where one aims.
    box.current?.scrollIntoView({ block: 'start' });
    let over = false;
    const isOver = (): boolean => over;
    let stream: MediaStream | null = null;
    const stop = (): void => {
      over = true;
      stream?.getTracks().forEach((each) => each.stop());
      stream = null;
    };
    const hidden = (): void => {
      // A phone that is put away must not go on filming.
      if (document.visibilityState === 'hidden') owner.current.onClose();
    };
    const look = async (reader: Detector): Promise<void> => {
      while (!isOver()) {
        const picture = video.current;
        const codes = picture && picture.readyState >= 2 ? await reader.detect(picture).catch(() => []) : [];
        if (isOver()) return;
        for (const { rawValue } of codes) {
          const code = owner.current.read(rawValue);
          if (code === null) {
            setUnreadable(rawValue.slice(0, 80));
            continue;
          }
          stop();
          shake();
          owner.current.onCode(code);
          return;
        }
        await new Promise((resolve) => setTimeout(resolve, EVERY_MS));
      }
    };
    const begin = async (): Promise<void> => {
      const reader = await detector();
      if (!reader) {
        setState('failed');
        return;
      }
      stream = await navigator.mediaDevices.getUserMedia({
        audio: false,
        video: { facingMode: { ideal: 'environment' }, width: { ideal: 1280 }, height: { ideal: 720 } },
      });
      if (isOver()) {
        stop();
        return;
      }
      track.current = stream.getVideoTracks()[0] ?? null;
      if (capabilitiesOf(track.current)?.torch) setLamp('off');
      if (video.current) {
        video.current.srcObject = stream;
        await video.current.play().catch(() => undefined);
      }
      setState('looking');
      await look(reader);
    };
    document.addEventListener('visibilitychange', hidden);
    begin().catch((error: unknown) => {
      stop();
      setState(error instanceof DOMException && error.name === 'NotAllowedError' ? 'denied' : 'failed');
    });
    return () => {
      document.removeEventListener('visibilitychange', hidden);
      stop();
    };
  }, []);

  const light = (): void => {
    const on = lamp !== 'on';
    setLamp(on ? 'on' : 'off');
    void track.current
      ?.applyConstraints({ advanced: [{ torch: on } as MediaTrackConstraintSet] })
      .catch(() => setLamp('none'));
  };
  const alive = state === 'starting' || state === 'looking';
  return (
    <div class="scanner" ref={box} role="group" aria-label={title}>
      {alive && (
        <div class="viewfinder">
          <video ref={video} muted playsInline aria-label={words.t('scan.camera')} />
        </div>
      )}
      <p role="status" class={alive ? 'help' : 'strong'}>
        {unreadable === null ? words.t(`scan.${state}`) : words.t('scan.unreadable', { text: unreadable })}
      </p>
      <div class="actions">
        {alive && lamp !== 'none' && (
          <button type="button" class="plain" aria-pressed={lamp === 'on'} onClick={light}>
            {words.t(lamp === 'on' ? 'scan.light-off' : 'scan.light')}
          </button>
        )}
        <button type="button" class="plain" onClick={onClose}>
          {words.t('scan.stop')}
        </button>
      </div>
    </div>
  );
}
