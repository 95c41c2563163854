import { readFile } from 'node:fs/promises';
import * as z from 'zod';
import { inpText } from '../../../functions/network/inpText.ts';
import { solveNetwork } from '../../../functions/network/solve.ts';
import { Refused } from '../../../shared/compute/refused.ts';
import { evaluateFlowTest } from '../../../shared/hydraulics/evaluateFlowTest.ts';
import { flowTestInput } from '../../../shared/hydraulics/flowTestInput.ts';
import type { NetworkAnswer } from '../../../shared/network/answer.ts';
import { compareWithField } from '../../../shared/network/compare.ts';
import {
  availableFlowQuestion,
  closingQuestion,
  waterBoundQuestion,
  type NetworkQuestion,
} from '../../../shared/network/question.ts';
import { sayFieldAndModel, sayNetwork } from '../../../shared/network/say.ts';
import { problem } from '../../../shared/problems/problem.ts';
import { localComputation } from './localComputation.ts';

/** The EPANET file by its path, or as its text. */
const model = {
  modelFile: z.string().min(1).max(1000).optional(),
  modelText: z.string().min(1).max(20_000_000).optional(),
};
interface GivenModel {
  readonly modelFile?: string | undefined;
  readonly modelText?: string | undefined;
}

async function textOf({ modelFile, modelText }: GivenModel): Promise<string> {
  if ((modelFile === undefined) === (modelText === undefined))
    throw new Refused([problem('model-file-or-text', 'modelFile')]);
  if (modelText !== undefined) return modelText;
  const file = modelFile ?? '';
  const bytes = await readFile(file).catch((error: unknown) => {
    const reason = (error as NodeJS.ErrnoException).code ?? String(error);
    throw new Refused([problem('file-unreadable', 'modelFile', { file, reason })]);
  });
  return inpText(bytes);
}

/** Reads the model and asks; what is wrong with either comes back as problems of the input. */
async function ask<Answer extends NetworkAnswer>(
  given: GivenModel,
  question: NetworkQuestion,
): Promise<Answer> {
  const reply = await solveNetwork(await textOf(given), question);
  const path = given.modelText === undefined ? 'modelFile' : 'modelText';
  if (!reply.ok)
    throw new Refused(reply.problems.map((found) => (found.path === 'inp' ? { ...found, path } : found)));
  return reply.answer as Answer;
}

const availableFlow = localComputation({
  name: 'network-available-flow',
  summary: 'network.compute.available-flow.summary',
  output: 'network.compute.available-flow.output',
  eitherSystem: true,
  input: availableFlowQuestion
    .omit({ ask: true, testFlowGpm: true })
    .extend({ ...model, fieldTest: flowTestInput.optional() }),
  example: {
    modelFile: 'model.inp',
    at: { hydrantId: 'H-12', nodeId: 'J-7' },
    fieldTest: { staticPsi: 86, residualPsi: 42, measuredFlowGpm: 789 },
  },
  run: async ({ modelFile, modelText, fieldTest, ...question }, reader) => {
    const test = fieldTest && evaluateFlowTest(fieldTest);
    const answer = await ask<Extract<NetworkAnswer, { ask: 'available-flow' }>>(
      { modelFile, modelText },
      {
        ask: 'available-flow',
        ...question,
        testFlowGpm: test?.measuredFlowGpm,
      },
    );
    const field = test ? compareWithField(test, answer) : null;
    return {
      said: [...sayNetwork(answer, reader), ...(field ? [sayFieldAndModel(field, reader)] : [])],
      ...answer,
      field,
    };
  },
});

const closing = localComputation({
  name: 'network-closing',
  summary: 'network.compute.closing.summary',
  output: 'network.compute.closing.output',
  eitherSystem: true,
  input: closingQuestion.omit({ ask: true }).extend(model),
  example: { modelFile: 'model.inp', links: ['P-3'], watch: [{ hydrantId: 'H-12', nodeId: 'J-7' }] },
  run: async ({ modelFile, modelText, ...question }, reader) => {
    const answer = await ask({ modelFile, modelText }, { ask: 'closing', ...question });
    return { said: sayNetwork(answer, reader), ...answer };
  },
});

const waterBound = localComputation({
  name: 'network-water-bound',
  summary: 'network.compute.water-bound.summary',
  output: 'network.compute.water-bound.output',
  eitherSystem: true,
  input: waterBoundQuestion.omit({ ask: true }).extend(model),
  example: {
    modelFile: 'model.inp',
    at: { nodeId: 'J-7' },
    lateral: { diameterIn: 6, lengthFt: 20, roughness: 120, minorLossK: 6 },
  },
  run: async ({ modelFile, modelText, ...question }, reader) => {
    const answer = await ask({ modelFile, modelText }, { ask: 'water-bound', ...question });
    return { said: sayNetwork(answer, reader), ...answer };
  },
});

export const networkComputations = [availableFlow, closing, waterBound] as const;
