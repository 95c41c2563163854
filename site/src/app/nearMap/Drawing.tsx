import { useRef } from 'preact/hooks';
import { formatQuantity } from '../../../../shared/units/format.ts';
import { useWords } from '../core/words.ts';
import type { Here, MapHydrant } from './onMap.ts';
import { arrows, touched, towards, type Arrow, type Offset } from './project.ts';

interface Props {
  readonly title: string;
  readonly here: Here;
  readonly reachFt: number;
  readonly marks: readonly (MapHydrant & Offset)[];
  readonly chosen: readonly string[];
  readonly choose: (hydrantIds: readonly string[]) => void;
}

/** The drawing is about as many units wide as a small phone has pixels, so a unit is a pixel there and more elsewhere. */
const HALF = 160;
const RIM = 148;
/** What a thumb may have meant: a circle of 48 px across. */
const THUMB = 24;
const LETTER = 8.4;

/** Marks on rings of distance around where one stands; north is up. One stop of the tab key, arrows go from mark to mark. */
export function Drawing({ title, here, reachFt, marks, chosen, choose }: Props) {
  const words = useWords();
  const svg = useRef<SVGSVGElement>(null);
  const scale = RIM / reachFt;
  const placed = marks.map(({ eastFt, northFt, ...rest }) => ({
    ...rest,
    x: eastFt * scale,
    y: -northFt * scale,
  }));
  const current = Math.max(
    0,
    placed.findIndex(({ hydrant }) => chosen.includes(hydrant.hydrantId)),
  );

  const touch = (event: MouseEvent): void => {
    const box = svg.current?.getBoundingClientRect();
    if (!box) return;
    const unit = (2 * HALF) / box.width;
    const at = {
      x: (event.clientX - box.left) * unit - HALF,
      y: (event.clientY - box.top) * unit - HALF,
    };
    const meant = touched(placed, at, THUMB);
    if (meant.length > 0) choose(meant.flatMap((index) => placed[index]?.hydrant.hydrantId ?? []));
  };
  const key = (event: KeyboardEvent): void => {
    if (!arrows.includes(event.key as Arrow)) return;
    event.preventDefault();
    const next = placed[towards(placed, current, event.key as Arrow)];
    if (!next) return;
    choose([next.hydrant.hydrantId]);
    svg.current?.querySelector<SVGElement>(`[data-id="${CSS.escape(next.hydrant.hydrantId)}"]`)?.focus();
  };

  // Numbers where they have room, nearest first; the chosen one always.
  const taken: { x: number; y: number; width: number }[] = [];
  const labelled = placed.map(({ hydrant, x, y }, index) => {
    const width = hydrant.hydrantId.length * LETTER + 6;
    const right = x + 14 + width <= HALF;
    const box = { x: right ? x + 14 : x - 14 - width, y: y - 9, width };
    const free =
      taken.every(
        (other) =>
          box.x > other.x + other.width || box.x + box.width < other.x || Math.abs(box.y - other.y) > 17,
      ) &&
      placed.every(
        (other, at) =>
          at === index || other.x < box.x - 10 || other.x > box.x + width + 10 || Math.abs(other.y - y) > 18,
      );
    if (!free && index !== current) return null;
    taken.push(box);
    return { ...box, right };
  });
  const accuracyFt = (here.accuracyM ?? 0) / 0.3048;

  return (
    // The marks inside are what the keyboard reaches; the touch is read here so that a near miss counts.
    <svg
      ref={svg}
      class="drawing"
      viewBox={`${-HALF} ${-HALF} ${2 * HALF} ${2 * HALF}`}
      role="group"
      aria-label={title}
      onClick={touch}
      onKeyDown={key}
    >
      <rect x={-HALF} y={-HALF} width={2 * HALF} height={2 * HALF} class="ground" />
      {[0.5, 1].map((share) => (
        <g key={share} aria-hidden="true">
          <circle r={RIM * share} class="ring" />
          <text x={0} y={RIM * share - 4} class="ring-label">
            {formatQuantity(reachFt * share, 'ft', words)}
          </text>
        </g>
      ))}
      <g aria-hidden="true" class="north">
        <path d={`M 0 ${-HALF + 5} l 6 12 h -12 z`} />
        <text x={12} y={-HALF + 17}>
          {words.t('bearing.N')}
        </text>
      </g>
      {accuracyFt > 0 && <circle r={Math.min(accuracyFt * scale, RIM)} class="accuracy" aria-hidden="true" />}
      <g class="you" aria-hidden="true">
        <path d="M -7 0 H 7 M 0 -7 V 7" />
      </g>
      {placed.map(({ hydrant, inService, distanceFt, bearing, x, y }, index) => {
        const label = labelled[index];
        const is = chosen.includes(hydrant.hydrantId);
        const state = inService === null ? 'unknown' : inService ? 'in' : 'out';
        return (
          <g
            key={hydrant.hydrantId}
            data-id={hydrant.hydrantId}
            class={`mark ${state} ${is ? 'chosen-mark' : ''}`}
            role="button"
            aria-pressed={is}
            // As SVG spells it: attributes there keep their case.
            tabindex={index === current ? 0 : -1}
            aria-label={[
              hydrant.hydrantId,
              hydrant.place ?? '',
              `${formatQuantity(Math.round(distanceFt), 'ft', words)} ${words.t(`bearing.${bearing}`)}`,
              inService === null ? '' : words.t(inService ? 'title.in-service' : 'title.out-of-service'),
            ]
              .filter(Boolean)
              .join(', ')}
            onKeyDown={(event) => {
              if (event.key !== 'Enter' && event.key !== ' ') return;
              event.preventDefault();
              choose([hydrant.hydrantId]);
            }}
          >
            <circle cx={x} cy={y} r={THUMB} class="thumb" />
            <circle cx={x} cy={y} r={9} class="dot" />
            {state === 'out' && <path d={`M ${x - 5} ${y - 5} l 10 10 m 0 -10 l -10 10`} class="cross" />}
            {label && (
              <text
                x={label.right ? label.x : label.x + label.width}
                y={y + 5}
                class={label.right ? '' : 'left'}
              >
                {hydrant.hydrantId}
              </text>
            )}
          </g>
        );
      })}
    </svg>
  );
}
