import type { ComponentType } from 'preact';
import { CounterAnswer } from './CounterAnswer.tsx';
import { FlowTestAnswer } from './FlowTestAnswer.tsx';
import { HowToMeasure } from './HowToMeasure.tsx';
import { lazy } from './Lazy.tsx';
import { ModelStart } from './ModelStart.tsx';
import type { ExtraProps } from './props.ts';
import { ReturnAnswer } from './ReturnAnswer.tsx';
import { WaterLostAnswer } from './WaterLostAnswer.tsx';

/** What a section shows beside its fields: an answer while one types, or a shorter way to fill it in. */
export const extras: Readonly<Record<string, ComponentType<ExtraProps>>> = {
  'counter.figures': CounterAnswer,
  'flow-test.flow': FlowTestAnswer,
  'hydrant-model.which': ModelStart,
  'rate-book.authorities': lazy(async () => (await import('../../rates/CodeLists.tsx')).CodeLists),
  'rate-book.machines': lazy(async () => (await import('../../rates/ScheduleLoad.tsx')).ScheduleLoad),
  'rate-book.preview': lazy(async () => (await import('../../rates/RatePreview.tsx')).RatePreview),
  'rate-book.which': lazy(async () => (await import('../../rates/DayDoubts.tsx')).DayDoubts),
  'repair.damage': lazy(async () => (await import('./DamageHint.tsx')).DamageHint),
  'repair.parts': lazy(async () => (await import('./KitParts.tsx')).KitParts),
  'return.when': ReturnAnswer,
  'valve.main-shut': lazy(async () => (await import('./MainShutAsk.tsx')).MainShutAsk),
  'stock.where': lazy(async () => (await import('./StockPlaces.tsx')).StockPlaces),
  'water.answer': WaterLostAnswer,
  'water.seen': HowToMeasure,
};
