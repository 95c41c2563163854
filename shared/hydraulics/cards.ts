import { holeFlowCard } from '../water/opening.ts';
import { rimWeirCard, verticalJetCard } from '../water/jet.ts';
import { horizontalThrowCard } from '../water/throw.ts';
import { availableFlowCard, residualAtFlowCard } from './availableFlow.ts';
import type { FormulaCard } from './card.ts';
import { diffuserFlowCard } from './diffuser.ts';
import { hazenWilliamsCard } from './hazenWilliams.ts';
import { hydrantClassCard } from './hydrantClass.ts';
import { outletFlowCard } from './outletFlow.ts';
import { pressureDropCard } from './pressureDrop.ts';
import { pumperFactorCard } from './pumperOutlet.ts';
import { velocityPressureCard } from './velocityPressure.ts';

/** Every formula card. A new formula adds its line here, and its worked example is then a test. */
export const cards: readonly FormulaCard[] = [
  outletFlowCard,
  pumperFactorCard,
  diffuserFlowCard,
  availableFlowCard,
  residualAtFlowCard,
  pressureDropCard,
  hydrantClassCard,
  hazenWilliamsCard,
  velocityPressureCard,
  verticalJetCard,
  rimWeirCard,
  horizontalThrowCard,
  holeFlowCard,
];
