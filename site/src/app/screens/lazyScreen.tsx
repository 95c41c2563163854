import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { later } from '../core/later.ts';
import { useWords } from '../core/words.ts';
import { Heading } from './Heading.tsx';

/** A screen that is not the first one: read when it is opened, or before. Without a connection it says so. */
export function lazyScreen(load: () => Promise<ComponentType>): ComponentType {
  const part = later(load);
  return function LazyScreen() {
    const words = useWords();
    const [Screen, setScreen] = useState<ComponentType | null>(() => part.here());
    const [failed, setFailed] = useState(false);
    useEffect(() => {
      void part
        .read()
        .then((screen) => setScreen(() => screen))
        .catch(() => setFailed(true));
    }, []);
    if (Screen) return <Screen />;
    const text = words.t(failed ? 'screen.not-here' : 'screen.reading');
    return failed ? <Heading title={text}>{text}</Heading> : <p role="status">{text}</p>;
  };
}
