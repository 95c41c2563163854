import {
  insteadOf,
  proofsAfterOtherOutage,
  proofsAfterRepair,
  type Proof,
} from '../../../../../shared/outages/proofs.ts';
import { stillClosed, valveTurns } from '../../../../../shared/outages/returnEffect.ts';
import { effectiveFacts, ofKind } from '../../../../../shared/submissions/effective.ts';
import { localMinute, readLocalTime } from '../localTime.ts';
import { rowsOf, textOf, type List, type Values } from '../nodes.ts';
import { firstInstant, type FormContext, type FormSpec } from '../spec.ts';
import { answered, dispatchNodes, note, photos } from './parts.ts';

const proofs: List = {
  type: 'list',
  name: 'proofs',
  words: 'field.proofs',
  as: 'proofs',
  atMost: 20,
  skip: (values) => textOf(values['result']) === '',
  item: [
    { type: 'kept', name: 'proof' },
    {
      type: 'choice',
      name: 'result',
      words: 'field.proof.result',
      list: 'proofResult',
      choices: ['passed', 'failed', 'deferred'],
    },
    {
      type: 'when',
      test: answered('result', 'passed', 'failed', 'deferred'),
      nodes: [
        { type: 'instant', name: 'at', words: 'field.when', required: true },
        { type: 'person', name: 'byWorkerId', words: 'field.byWorkerId', required: true },
      ],
    },
    {
      type: 'when',
      test: answered('result', 'deferred'),
      nodes: [
        { type: 'text', name: 'deferredReason', words: 'field.proof.deferredReason', required: false },
        { type: 'person', name: 'deferredByWorkerId', words: 'field.proof.deferredByWorkerId' },
      ],
    },
  ],
};

const valves: List = {
  type: 'list',
  name: 'valvesReopened',
  words: 'field.valvesReopened',
  as: 'valves',
  atMost: 40,
  blank: {},
  // A valve that the record shows closed is listed; until somebody says that it was reopened nothing is sent of it.
  skip: (values) => values['_known'] === 'yes' && textOf(values['at']) === '',
  item: [
    { type: 'text', name: 'valveId', words: 'field.valveId', keypad: 'code', required: true },
    { type: 'instant', name: 'at', words: 'field.valvesReopened.at', required: true },
    { type: 'person', name: 'byWorkerId', words: 'field.byWorkerId', required: true },
  ],
};

/**
 * The proofs this hydrant needs for what is out of it, a strike's if a strike is among it; each followed by the one that
 * may stand in for it.
 */
function offeredProofs({
  hydrant,
  strike,
  status,
  history,
  around,
}: Pick<FormContext, 'hydrant' | 'strike' | 'status' | 'history' | 'around'>): readonly Proof[] {
  if (!strike && !status?.open.some(({ cause }) => cause === 'strike')) return proofsAfterOtherOutage;
  const mainOpened = ofKind(effectiveFacts([...history, ...around]).facts, 'repair').some(({ fact }) =>
    fact.body.steps.some(({ step }) => step === 'main-opened'),
  );
  return proofsAfterRepair(hydrant?.type ?? 'unknown', mainOpened).flatMap((proof) => {
    const instead = insteadOf[proof];
    return instead ? [proof, instead] : [proof];
  });
}

const blank = (context: FormContext): Values => {
  const { strike, status, history, around, personId, now, zone } = context;
  const open = status?.open ?? [];
  const { facts } = effectiveFacts([...history, ...around]);
  return {
    returnedAt: localMinute(now, zone),
    _returnedAt: localMinute(now, zone),
    // The strike itself, or the only outage there is; another one is closed by a deliberate tick.
    closes: strike ? [strike.strikeId] : open.length === 1 ? open.map(({ outageId }) => outageId) : [],
    proofs: offeredProofs(context).map((proof) => ({ proof, result: '' })),
    valvesReopened: stillClosed(valveTurns(facts), now.getTime()).map((valveId) => ({
      valveId,
      byWorkerId: personId,
      _known: 'yes',
    })),
    'dispatch.toldByWorkerId': personId,
    photos: [],
  };
};

/**
 * The time that the form gave itself follows the latest proof and reopening, because a hydrant is not back before them;
 * one that somebody typed stays.
 */
const follow = (values: Values, zone: string): Values => {
  const given = textOf(values['_returnedAt']);
  if (given === '' || textOf(values['returnedAt']) !== given) return values;
  const ms = (typed: string): number => {
    const read = readLocalTime(typed, zone);
    return read.ok ? Date.parse(read.instant) : Number.NEGATIVE_INFINITY;
  };
  const shown = rowsOf(values['proofs']).filter((row) => textOf(row['result']) !== '');
  const latest = [...shown, ...rowsOf(values['valvesReopened'])]
    .map((row) => textOf(row['at']))
    .reduce((last, at) => (ms(at) > ms(last) ? at : last), given);
  return latest === given ? values : { ...values, returnedAt: latest, _returnedAt: latest };
};

export const returnToServiceSpec: FormSpec = {
  kind: 'return-to-service',
  nullable: ['dispatch'],
  nodes: [
    {
      type: 'section',
      id: 'return.what',
      nodes: [{ type: 'outages', name: 'closes', required: true }],
    },
    { type: 'section', id: 'return.proofs', nodes: [proofs] },
    { type: 'section', id: 'return.valves', nodes: [valves] },
    {
      type: 'section',
      id: 'return.when',
      nodes: [
        { type: 'instant', name: 'returnedAt', required: true },
        { type: 'instant', name: 'markRemovedAt' },
        ...dispatchNodes,
      ],
    },
    { type: 'section', id: 'photos', nodes: [photos(30)] },
    note,
  ],
  blank,
  follow,
  occurredAt: firstInstant('returnedAt'),
};
