import type { ComponentChildren } from 'preact';

/** A box to tick with a pencil, drawn: a font may not have one. */
export function Box({ children }: { readonly children: ComponentChildren }) {
  return (
    <span class="pencil">
      <span class="pencil-box" aria-hidden="true" /> {children}
    </span>
  );
}
