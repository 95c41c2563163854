import type { ComponentType } from 'preact';
import { lazy } from './Lazy.tsx';
import type { ExtraProps } from './props.ts';

const ofTheDesk = { when: 'asked' } as const;

/** What a section shows beside its fields: an answer while one types, or a shorter way to fill it in. */
export const extras: Readonly<Record<string, ComponentType<ExtraProps>>> = {
  'counter.figures': lazy(async () => (await import('./CounterAnswer.tsx')).CounterAnswer, ofTheDesk),
  'flow-test.flow': lazy(async () => (await import('./FlowTestAnswer.tsx')).FlowTestAnswer),
  'hydrant-model.which': lazy(async () => (await import('./ModelStart.tsx')).ModelStart, ofTheDesk),
  'rate-book.authorities': lazy(async () => (await import('../../rates/CodeLists.tsx')).CodeLists, ofTheDesk),
  'rate-book.machines': lazy(
    async () => (await import('../../rates/ScheduleLoad.tsx')).ScheduleLoad,
    ofTheDesk,
  ),
  'rate-book.preview': lazy(async () => (await import('../../rates/RatePreview.tsx')).RatePreview, ofTheDesk),
  'rate-book.which': lazy(async () => (await import('../../rates/DayDoubts.tsx')).DayDoubts, ofTheDesk),
  'repair.damage': lazy(async () => (await import('./DamageHint.tsx')).DamageHint),
  'repair.parts': lazy(async () => (await import('./KitParts.tsx')).KitParts),
  'return.when': lazy(async () => (await import('./ReturnAnswer.tsx')).ReturnAnswer),
  'valve.main-shut': lazy(async () => (await import('./MainShutAsk.tsx')).MainShutAsk),
  'stock.where': lazy(async () => (await import('./StockPlaces.tsx')).StockPlaces),
  'water.answer': lazy(async () => (await import('./WaterLostAnswer.tsx')).WaterLostAnswer),
  'water.seen': lazy(async () => (await import('./HowToMeasure.tsx')).HowToMeasure),
};
