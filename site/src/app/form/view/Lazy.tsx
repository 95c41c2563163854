import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { ExtraProps } from './props.ts';

/** A part that only the desk needs and that is large: read when its section is drawn, so that crews do not carry it. */
export function lazy(load: () => Promise<ComponentType<ExtraProps>>): ComponentType<ExtraProps> {
  return function Lazy(props: ExtraProps) {
    const [Part, setPart] = useState<ComponentType<ExtraProps> | null>(null);
    useEffect(() => {
      // Without a connection the form still works; the part comes with the next opening.
      void load()
        .then((part) => setPart(() => part))
        .catch(() => undefined);
    }, []);
    return Part ? <Part {...props} /> : null;
  };
}
