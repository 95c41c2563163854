import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { DispatchProps } from './DispatchState.tsx';

/**
 * What was sent to dispatch about a strike or a hydrant. Read when a screen draws it, so that the first page stays small;
 * without a connection there is nothing to show of it, and what is missing still says that dispatch was not told.
 */
export function DispatchPart(props: DispatchProps) {
  const [Part, setPart] = useState<ComponentType<DispatchProps> | null>(null);
  useEffect(() => {
    void import('./DispatchState.tsx')
      .then(({ DispatchState }) => setPart(() => DispatchState))
      .catch(() => undefined);
  }, []);
  return Part ? <Part {...props} /> : null;
}
