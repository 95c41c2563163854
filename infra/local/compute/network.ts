import { readFile } from 'node:fs/promises';
import * as z from 'zod';
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

const modelFile = z.string().min(1).max(1000);

/** Reads the file and asks; what is wrong with either comes back as problems of the input. */
async function ask<Answer extends NetworkAnswer>(file: string, question: NetworkQuestion): Promise<Answer> {
  const inp = await readFile(file, 'latin1').catch((error: unknown) => {
    const reason = (error as NodeJS.ErrnoException).code ?? String(error);
    throw new Refused([problem('file-unreadable', 'modelFile', { file, reason })]);
  });
  const reply = await solveNetwork(inp, question);
  if (!reply.ok)
    throw new Refused(
      reply.problems.map((found) => (found.path === 'inp' ? { ...found, path: 'modelFile' } : found)),
    );
  return reply.answer as Answer;
}

const availableFlow = localComputation({
  name: 'network-available-flow',
  summary: 'network.compute.available-flow.summary',
  output: 'network.compute.available-flow.output',
  eitherSystem: true,
  input: availableFlowQuestion
    .omit({ ask: true, testFlowGpm: true })
    .extend({ modelFile, fieldTest: flowTestInput.optional() }),
  example: {
    modelFile: 'model.inp',
    at: { hydrantId: 'H-12', nodeId: 'J-7' },
    fieldTest: { staticPsi: 86, residualPsi: 42, measuredFlowGpm: 789 },
  },
  run: async ({ modelFile: file, fieldTest, ...question }, reader) => {
    const test = fieldTest && evaluateFlowTest(fieldTest);
    const answer = await ask<Extract<NetworkAnswer, { ask: 'available-flow' }>>(file, {
      ask: 'available-flow',
      ...question,
      testFlowGpm: test?.measuredFlowGpm,
    });
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
  input: closingQuestion.omit({ ask: true }).extend({ modelFile }),
  example: { modelFile: 'model.inp', links: ['P-3'], watch: [{ hydrantId: 'H-12', nodeId: 'J-7' }] },
  run: async ({ modelFile: file, ...question }, reader) => {
    const answer = await ask(file, { ask: 'closing', ...question });
    return { said: sayNetwork(answer, reader), ...answer };
  },
});

const waterBound = localComputation({
  name: 'network-water-bound',
  summary: 'network.compute.water-bound.summary',
  output: 'network.compute.water-bound.output',
  eitherSystem: true,
  input: waterBoundQuestion.omit({ ask: true }).extend({ modelFile }),
  example: {
    modelFile: 'model.inp',
    at: { nodeId: 'J-7' },
    lateral: { diameterIn: 6, lengthFt: 20, roughness: 120, minorLossK: 6 },
  },
  run: async ({ modelFile: file, ...question }, reader) => {
    const answer = await ask(file, { ask: 'water-bound', ...question });
    return { said: sayNetwork(answer, reader), ...answer };
  },
});

export const networkComputations = [availableFlow, closing, waterBound] as const;
