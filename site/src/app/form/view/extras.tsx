import type { ComponentType } from 'preact';
import { FlowTestAnswer } from './FlowTestAnswer.tsx';
import { HowToMeasure } from './HowToMeasure.tsx';
import { KitParts } from './KitParts.tsx';
import { ModelStart } from './ModelStart.tsx';
import type { ExtraProps } from './props.ts';
import { ReturnAnswer } from './ReturnAnswer.tsx';
import { WaterLostAnswer } from './WaterLostAnswer.tsx';

/** What a section shows beside its fields: an answer while one types, or a shorter way to fill it in. */
export const extras: Readonly<Record<string, ComponentType<ExtraProps>>> = {
  'flow-test.flow': FlowTestAnswer,
  'hydrant-model.which': ModelStart,
  'repair.parts': KitParts,
  'return.when': ReturnAnswer,
  'water.answer': WaterLostAnswer,
  'water.seen': HowToMeasure,
};
