import { formatNumber, type Reader } from '../units/format.ts';
import { say, type Locale } from '../words/index.ts';
import type { TighteningPlan } from './plan.ts';
import type { BackOffRecord, TorqueRecord } from './record.ts';
import type { Torque } from './torqueUnits.ts';

/** A torque in both units, the reader's own first: a wrench may have either scale. */
export function sayTorque({ lbfFt, nM }: Torque, { system, locale }: Reader): string {
  const us = `${formatNumber(lbfFt, locale, 1)} ${say(locale, 'hydraulics.unit.lbf.ft.symbol')}`;
  const metric = `${formatNumber(nM, locale, 1)} ${say(locale, 'hydraulics.unit.N.m.symbol')}`;
  return system === 'us' ? `${us} (${metric})` : `${metric} (${us})`;
}

/** The torque as the manual prints it, where that is neither of the two units; else nothing. */
export const sayPrinted = ({ torque, torqueTo, unit }: TorqueRecord, locale: Locale): string =>
  unit === 'lbf.ft' || unit === 'N.m'
    ? ''
    : say(locale, 'tightening.printed-as', {
        from: formatNumber(torque, locale, 4),
        to: torqueTo === null ? 'none' : formatNumber(torqueTo, locale, 4),
        unit: say(locale, `value.torqueUnit.${unit}`),
      });

/** `1-5-3-7, 2-6-4-8`: as it is read out. */
export const sayOrder = ({ groups }: Pick<TighteningPlan, 'groups'>): string =>
  groups.map((group) => group.join('-')).join(', ');

/** Eighths of a turn as a fraction, as manuals print them; else a decimal. */
function sayTurns(turns: number, locale: Locale): string {
  const eighths = turns * 8;
  if (!Number.isInteger(eighths) || eighths <= 0) return formatNumber(turns, locale, 3);
  const signs = ['', '⅛', '¼', '⅜', '½', '⅝', '¾', '⅞'];
  const whole = Math.floor(turns);
  return `${whole > 0 ? whole : ''}${signs[eighths % 8] ?? ''}`;
}

/** What to do with a nut that carries thrust. */
export function sayBackOff({ turns, turnsTo, lock, manual, page }: BackOffRecord, locale: Locale): string {
  const amount =
    turnsTo === null
      ? sayTurns(turns, locale)
      : say(locale, 'tightening.turns-to', { from: sayTurns(turns, locale), to: sayTurns(turnsTo, locale) });
  return say(locale, lock ? 'tightening.back-off-lock' : 'tightening.back-off', { amount, manual, page });
}

/** The torque with its manual and page, or whom to ask. */
export const sayCited = ({ torque }: TighteningPlan, reader: Reader): string =>
  torque
    ? say(reader.locale, torque.to ? 'tightening.torque-range' : 'tightening.torque', {
        torque: sayTorque(torque, reader),
        to: torque.to ? sayTorque(torque.to, reader) : '',
        manual: torque.manual,
        page: torque.page,
      })
    : say(reader.locale, 'tightening.see-manual');

/** What the tolerance of a wrench makes of the torque; nothing where either is not known. */
export const sayWrench = ({ wrench }: TighteningPlan, reader: Reader): string =>
  wrench
    ? say(reader.locale, 'tightening.wrench', {
        percent: formatNumber(wrench.toleranceFraction * 100, reader.locale, 1),
        least: sayTorque(wrench.least, reader),
        most: sayTorque(wrench.most, reader),
      })
    : '';

/** The plan in steps that can be read out at the hydrant. */
export function sayPlan(plan: TighteningPlan, reader: Reader): string[] {
  const { locale } = reader;
  const steps = plan.passes.map(({ share, pattern, torque: each }, index) =>
    say(locale, `tightening.pass-${pattern}`, {
      number: index + 1,
      percent: Math.round(share * 100),
      torque: each ? sayTorque(each, reader) : 'none',
      order: sayOrder(plan),
    }),
  );
  const tolerance = sayWrench(plan, reader);
  return [
    sayCited(plan, reader),
    say(locale, 'tightening.number-bolts', { bolts: plan.bolts }),
    ...steps,
    ...(tolerance ? [tolerance] : []),
  ];
}
