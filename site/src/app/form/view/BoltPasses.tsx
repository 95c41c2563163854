import { OutOfRange } from '../../../../../shared/hydraulics/card.ts';
import { torqueOf } from '../../../../../shared/tightening/fromModel.ts';
import type { BoltedJoint } from '../../../../../shared/tightening/modelJoint.ts';
import { passes } from '../../../../../shared/tightening/order.ts';
import { tighteningPlan, type TighteningPlan } from '../../../../../shared/tightening/plan.ts';
import { tighteningRing } from '../../../../../shared/tightening/ring.ts';
import { ringSvg } from '../../../../../shared/tightening/ringSvg.ts';
import {
  sayCited,
  sayOrder,
  sayPrinted,
  sayTorque,
  sayWrench,
} from '../../../../../shared/tightening/say.ts';
import { passNames, type PassName } from '../../../../../shared/tightening/tightened.ts';
import type { Torque } from '../../../../../shared/tightening/torqueUnits.ts';
import { readNumber } from '../number.ts';
import { stringsOf, textOf, type Values } from '../nodes.ts';
import { fieldId, problemsAt, useScope } from './scope.ts';

interface Props {
  readonly id: string;
  readonly recorded: BoltedJoint | null;
  readonly title: string;
  readonly row: Values | null;
  readonly path: string | null;
  readonly tick: (pass: PassName) => void;
}

/** The plan for these bolts; null where their number is not known or has no cross pattern. */
function planOf(recorded: BoltedJoint | null, bolts: number | null): TighteningPlan | null {
  if (bolts === null) return null;
  try {
    const percent = recorded?.wrenchTolerancePercent ?? null;
    return tighteningPlan({
      record: recorded && torqueOf(recorded),
      bolts,
      wrenchToleranceFraction: percent === null ? undefined : percent / 100,
    });
  } catch (error) {
    if (error instanceof OutOfRange) return null;
    throw error;
  }
}

/** Ring, torque with its source, and the passes to tick. Without a torque the maker's manual is named, and no number. */
export function BoltPasses({ id, recorded, title, row, path, tick }: Props) {
  const { words, problems } = useScope();
  const typed = row && readNumber(textOf(row['bolts']));
  // The record's own count stands: it is not asked for again.
  const bolts = recorded?.bolts ?? typed ?? null;
  const plan = planOf(recorded, bolts);
  const torque = recorded && torqueOf(recorded);
  const ticked = row ? stringsOf(row['passes']) : [];
  const wrong = path ? problemsAt(problems, `${path}.passes`) : [];
  const wrench = plan ? sayWrench(plan, words) : '';
  return (
    <>
      <p class={torque ? 'torque' : 'label-note'}>
        {plan ? sayCited(plan, words) : words.t('tightening.see-manual')}
      </p>
      {torque && (
        <p class="help">
          {[
            sayPrinted(torque, words.locale),
            words.t(`tightening.condition.${recorded.condition ?? 'unknown'}`),
            wrench,
          ]
            .filter(Boolean)
            .join(' ')}
        </p>
      )}
      <div class="joint-plan">
        {plan ? (
          <div class="ring">
            <div
              // Our own drawing from numbers and catalogue words.
              dangerouslySetInnerHTML={{
                __html: ringSvg(tighteningRing(plan.bolts), { locale: words.locale, idPrefix: id }),
              }}
            />
            <p class="help">{words.t('tightening.follow', { order: sayOrder(plan) })}</p>
          </div>
        ) : (
          <p class="label-note">{words.t('tightening.no-order', { bolts: bolts ?? 0 })}</p>
        )}
        <div
          class="choices wide"
          role="group"
          id={path ? fieldId(`${path}.passes`) : undefined}
          tabIndex={-1}
          aria-label={words.t('tightening.passes-of', { joint: title })}
        >
          {wrong.length > 0 && <p class="error">{words.t('problem.pass-twice')}</p>}
          {passNames.map((name, index) => (
            <label class="choice" key={name}>
              <input type="checkbox" checked={ticked.includes(name)} onChange={() => tick(name)} />
              <span>{sayPass(plan, index, words)}</span>
            </label>
          ))}
        </div>
      </div>
    </>
  );
}

/** One pass: its share, and its torque where there is one, both ends of a printed range. */
function sayPass(plan: TighteningPlan | null, index: number, words: ReturnType<typeof useScope>['words']) {
  const pass = passes[index];
  const share = pass?.share ?? 1;
  const torque = plan?.torque;
  const part = ({ lbfFt, nM }: Torque): string => sayTorque({ lbfFt: lbfFt * share, nM: nM * share }, words);
  const said = !torque
    ? 'none'
    : torque.to
      ? words.t('tightening.turns-to', { from: part(torque), to: part(torque.to) })
      : part(torque);
  return words.t(`tightening.tick-${pass?.pattern ?? 'cross'}`, {
    number: index + 1,
    percent: Math.round(share * 100),
    torque: said,
  });
}
