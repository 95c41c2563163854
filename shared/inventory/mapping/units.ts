import { folded } from '../values/blank.ts';
import { readQuantity, readUnit, toUnit, type SourceUnit } from '../values/quantity.ts';
import { median, type ColumnProfile } from './profile.ts';
import type { QuantityRule } from './fields.ts';

/** How the quantities of one column are read, and what that rests on. */
export interface UnitDecision {
  /** What a bare number is in; null when nothing shows it, and then bare numbers are left out. */
  readonly bare: SourceUnit | null;
  readonly why: 'stated' | 'column-name' | 'osm-tag' | 'written' | 'values' | 'usual' | 'not-shown' | 'mixed';
  /** Units written beside the numbers, with how many rows each, the most frequent first. */
  readonly written: readonly (readonly [SourceUnit, number])[];
  /** The unit of most rows, bare numbers counted in theirs. */
  readonly usual: SourceUnit | null;
  readonly commaIsDecimal: boolean;
}

/** Sizes that outlets, laterals and mains are made in. Common practice: AWWA pipe sizes, ISO 6708 nominal diameters. */
const inches = new Set([
  0.75, 1, 1.25, 1.5, 2, 2.25, 2.5, 3, 3.5, 4, 4.25, 4.5, 5, 5.25, 5.5, 6, 8, 10, 12, 14, 16, 18, 20, 24, 30,
  36, 42, 48,
]);
const millimetres = new Set([
  20, 25, 32, 40, 50, 52, 63, 65, 75, 80, 90, 100, 110, 125, 140, 150, 160, 180, 200, 225, 250, 280, 300, 315,
  350, 355, 375, 400, 450, 500, 600, 700, 750, 800, 900, 1000, 1050, 1200,
]);

const isStep = (value: number, unit: SourceUnit): boolean =>
  unit === 'mm' ? millimetres.has(value) : unit === 'tenth-in' ? inches.has(value / 10) : inches.has(value);

/** Tags whose unit the OpenStreetMap wiki defines: a bare diameter is in millimetres. */
const tagUnits: Readonly<Record<string, SourceUnit>> = { 'fire_hydrant:diameter': 'mm' };

/** True when some number of the column can only be read with the comma as decimal mark (`2,5`), and none has a point. */
export function usesDecimalComma(column: ColumnProfile): boolean {
  let shown = false;
  for (const text of column.values.keys()) {
    if (/^-?\d+\.\d/.test(text)) return false;
    if (/^-?\d+,\d+/.test(text) && !/^-?\d{1,3}(,\d{3})+(\D|$)/.test(text)) shown = true;
  }
  return shown;
}

/** @param stated the unit a person gave for this field with `--unit`, or null */
export function decideUnit(
  column: ColumnProfile,
  rule: QuantityRule,
  stated: SourceUnit | null,
): UnitDecision {
  const commaIsDecimal = usesDecimalComma(column);
  const counts = new Map<SourceUnit, number>();
  const bare: (readonly [value: number, rows: number])[] = [];
  for (const [text, rows] of column.values) {
    const read = readQuantity(text, commaIsDecimal);
    if (!read || 'unknownUnit' in read) continue;
    if (read.unit) counts.set(read.unit, (counts.get(read.unit) ?? 0) + rows);
    else bare.push([read.value, rows]);
  }
  const written = [...counts].sort(([, one], [, other]) => other - one);
  const bareRows = bare.reduce((sum, [, rows]) => sum + rows, 0);
  const decided = (unit: SourceUnit | null, why: UnitDecision['why']): UnitDecision => {
    const total = new Map(written);
    if (unit) total.set(unit, (total.get(unit) ?? 0) + bareRows);
    const usual = [...total].sort(([, one], [, other]) => other - one)[0]?.[0] ?? null;
    return { bare: unit, why, written, usual, commaIsDecimal };
  };
  if (stated) return decided(stated, 'stated');
  const named = unitInName(column.name, rule);
  if (named) return decided(named, 'column-name');
  const tagged = tagUnits[column.name];
  if (tagged) return decided(tagged, 'osm-tag');
  if (written.length > 1) return decided(null, 'mixed');
  if (written[0]) return decided(written[0][0], 'written');
  if (rule.candidates.length === 1) return decided(rule.candidates[0] ?? null, 'usual');
  const fitting = rule.candidates.filter((unit) => fits(unit, bare, rule));
  return fitting.length === 1 ? decided(fitting[0] ?? null, 'values') : decided(null, 'not-shown');
}

/** The column's name without a unit at its end: `MAIN_SIZE (mm)` and `MAIN_SIZE_MM` are `MAIN_SIZE`. */
export function withoutUnit(name: string): string {
  const bracket = /\s*[([]([^)\]]+)[)\]]\s*$/.exec(name);
  if (bracket?.[1] !== undefined && readUnit(bracket[1])) return name.slice(0, bracket.index);
  const last = /[ _.-]+([^ _.-]+)$/.exec(name);
  return last?.[1] !== undefined && last.index > 0 && readUnit(last[1]) ? name.slice(0, last.index) : name;
}

/** `MAIN_MM`, `Flow (L/min)`, `depth ft`: a unit as the last word of the column's name. */
function unitInName(name: string, rule: QuantityRule): SourceUnit | null {
  const inBrackets = /[([]([^)\]]+)[)\]]\s*$/.exec(name)?.[1];
  const words = folded(name.replace(/([a-z])([A-Z])/g, '$1 $2')).split(' ');
  for (const spelled of [
    inBrackets,
    words.length > 1 ? words.at(-1) : undefined,
    words.length === 1 ? words[0] : undefined,
  ]) {
    const found = spelled === undefined ? null : readUnit(spelled);
    if (found && (rule.target === 'gpm') === /^(gpm|MGD|L\/|m3)/.test(found.unit)) return found.unit;
  }
  return null;
}

function fits(unit: SourceUnit, bare: readonly (readonly [number, number])[], rule: QuantityRule): boolean {
  let all = 0;
  let inStep = 0;
  for (const [value, rows] of bare) {
    if (value === 0) continue;
    all += rows;
    if (rule.inSteps ? isStep(value, unit) : true) inStep += rows;
  }
  if (all === 0 || inStep / all < 0.9) return false;
  const middle = toUnit(
    median(bare.flatMap(([value, rows]) => Array<number>(Math.min(rows, 1000)).fill(value))),
    unit,
    rule.target,
  );
  return middle >= Math.max(rule.minimum, rule.inSteps ? 1 : 0.5) && middle <= rule.usualMaximum;
}
