import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { useObservable } from '../core/observable.ts';
import { route } from '../core/router.ts';
import { useWords } from '../core/words.ts';

/** False until the first screen of this page has been drawn. */
let moved = false;

/** A screen's heading. It takes the focus when the screen opens, so that a reader of any kind knows where they are. */
export function Heading({
  children,
  title,
}: {
  readonly children: ComponentChildren;
  readonly title: string;
}) {
  const words = useWords();
  const at = useObservable(route).path;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = `${title} · ${words.t('app.name')}`;
  }, [title, words.locale]);
  useEffect(() => {
    window.scrollTo(0, 0);
    // On the first load the browser's own start of the page is right.
    if (moved) heading.current?.focus();
    moved = true;
  }, [at]);
  return (
    <h1 tabIndex={-1} ref={heading}>
      {children}
    </h1>
  );
}
