import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { later } from '../../core/later.ts';
import type { ExtraProps } from './props.ts';

interface Ways<Props> {
  /** Drawn until it is there, and in its place where it cannot be read. */
  readonly meanwhile?: ComponentType<Props>;
  /** `asked`: a part for the desk, which no phone at a curb reads ahead. */
  readonly when?: 'soon' | 'asked';
}

/** A part that is large or rarely looked at: read when it is drawn, or before, so that the first page does not carry it. */
export function lazy<Props extends object = ExtraProps>(
  load: () => Promise<ComponentType<Props>>,
  { meanwhile: Meanwhile, when = 'soon' }: Ways<Props> = {},
): ComponentType<Props> {
  const part = later(load, when);
  return function Lazy(props: Props) {
    const [Part, setPart] = useState<ComponentType<Props> | null>(() => part.here());
    useEffect(() => {
      // Without a connection the form still works; the part comes with the next opening.
      void part
        .read()
        .then((component) => setPart(() => component))
        .catch(() => undefined);
    }, []);
    return Part ? <Part {...props} /> : Meanwhile ? <Meanwhile {...props} /> : null;
  };
}
