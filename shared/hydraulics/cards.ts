import { availableFlowCard, residualAtFlowCard } from './availableFlow.ts';
import type { FormulaCard } from './card.ts';
import { hydrantClassCard } from './hydrantClass.ts';
import { outletFlowCard } from './outletFlow.ts';
import { pressureDropCard } from './pressureDrop.ts';
import { diffuserFlowCard } from './diffuser.ts';
import { pumperFactorCard } from './pumperOutlet.ts';

/** Every formula card. A new formula adds its line here, and its worked example is then a test. */
export const cards: readonly FormulaCard[] = [
  outletFlowCard,
  pumperFactorCard,
  diffuserFlowCard,
  availableFlowCard,
  residualAtFlowCard,
  pressureDropCard,
  hydrantClassCard,
];
