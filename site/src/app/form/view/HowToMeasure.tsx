import { useScope } from './scope.ts';

/** Drawn to be understood without a word: what is measured stands between the two arrows. */
const drawings = {
  jet: (
    <>
      <path
        d="M70 104V28c0-10 20-10 20 0M90 28v20M50 28v20M70 28c0-10-20-10-20 0"
        fill="none"
        stroke-width="4"
      />
      <path d="M60 104h20v12H60z" />
      <path d="M112 22v82M106 30l6-8 6 8M106 96l6 8 6-8" fill="none" stroke-width="2" />
    </>
  ),
  throw: (
    <>
      <path d="M20 36c50 0 80 14 96 52" fill="none" stroke-width="4" />
      <path d="M8 28h14v16H8z" />
      <path d="M22 20h86M30 14l-8 6 8 6M100 14l8 6-8 6" fill="none" stroke-width="2" />
      <path d="M124 36v38M118 44l6-8 6 8M118 66l6 8 6-8" fill="none" stroke-width="2" />
      <path d="M108 14v66M104 36h24M104 74h24" fill="none" stroke-width="1" stroke-dasharray="4 3" />
    </>
  ),
  opening: (
    <>
      <ellipse cx="70" cy="56" rx="40" ry="24" fill="none" stroke-width="4" />
      <path d="M30 98h80M38 92l-8 6 8 6M102 92l8 6-8 6" fill="none" stroke-width="2" />
      <path d="M30 56v48M110 56v48" fill="none" stroke-width="1" stroke-dasharray="4 3" />
    </>
  ),
} as const;

/** What to measure and from where, with a picture each; folded, since a crew needs it once. */
export function HowToMeasure() {
  const { words } = useScope();
  return (
    <details class="measure">
      <summary>{words.t('measure.title')}</summary>
      <p>{words.t('hydraulics.caution.measure')}</p>
      <ul class="plain-list">
        {(Object.keys(drawings) as (keyof typeof drawings)[]).map((what) => (
          <li key={what}>
            <svg viewBox="0 0 140 120" fill="currentColor" stroke="currentColor" aria-hidden="true">
              {drawings[what]}
            </svg>
            <p>
              <strong>{words.t(`measure.${what}`)}.</strong> {words.t(`measure.${what}.how`)}
            </p>
          </li>
        ))}
      </ul>
    </details>
  );
}
