import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { ExtraProps } from './props.ts';

/** A part that is large or rarely looked at: read when it is drawn, so that the first page does not carry it. */
export function lazy<Props extends object = ExtraProps>(
  load: () => Promise<ComponentType<Props>>,
  /** Drawn until it is there, and in its place where it cannot be read. */
  Meanwhile: ComponentType<Props> | null = null,
): ComponentType<Props> {
  return function Lazy(props: Props) {
    const [Part, setPart] = useState<ComponentType<Props> | null>(null);
    useEffect(() => {
      // Without a connection the form still works; the part comes with the next opening.
      void load()
        .then((part) => setPart(() => part))
        .catch(() => undefined);
    }, []);
    return Part ? <Part {...props} /> : Meanwhile ? <Meanwhile {...props} /> : null;
  };
}
