import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { useWords } from '../core/words.ts';
import { Heading } from './Heading.tsx';

/** A screen that few need and that is large: read when it is opened. Without a connection it says so. */
export function lazyScreen(load: () => Promise<ComponentType>): ComponentType {
  return function LazyScreen() {
    const words = useWords();
    const [Screen, setScreen] = useState<ComponentType | null>(null);
    const [failed, setFailed] = useState(false);
    useEffect(() => {
      void load()
        .then((screen) => setScreen(() => screen))
        .catch(() => setFailed(true));
    }, []);
    if (Screen) return <Screen />;
    const text = words.t(failed ? 'sheet.failed' : 'sheet.reading');
    return failed ? <Heading title={text}>{text}</Heading> : <p role="status">{text}</p>;
  };
}
