import { describe, expect, it } from 'vitest';
import { proofs } from '../../../shared/outages/proofs.ts';
import { procedureSteps } from '../../../shared/procedure/steps.ts';
import { stages } from '../../../shared/strikes/state.ts';
import { forms, kinds } from '../../../shared/submissions/kinds.ts';
import { outageCauses } from '../../../shared/submissions/forms/outage.ts';
import { hydrantTypes } from '../../../shared/inventory/hydrant.ts';
import { en } from '../../../shared/words/en/index.ts';
import { es } from '../../../shared/words/es/index.ts';
import { hasWords, say } from '../../../shared/words/index.ts';
import { specs } from '../../../site/src/app/form/specs/index.ts';
import type { Node } from '../../../site/src/app/form/nodes.ts';
import { valueWords, wordsOf } from '../../../site/src/app/form/words.ts';

/** Every key that a form needs to be drawn. */
function keysOf(kind: string, nodes: readonly Node[], base = ''): string[] {
  return nodes.flatMap((node): string[] => {
    if (node.type === 'section') return [`section.${node.id}`, ...keysOf(kind, node.nodes, base)];
    if (node.type === 'when') return keysOf(kind, node.nodes, base);
    if (node.type === 'kept') return [];
    const path = base === '' ? node.name : `${base}.${node.name}`;
    const key = wordsOf(kind, node, path);
    if (node.type === 'list') {
      const added = node.as === 'steps' || node.as === 'proofs' ? [] : [`${key}.add`];
      return [key, `${key}.item`, ...added, ...keysOf(kind, node.item, path)];
    }
    const choices =
      node.type === 'choice' || node.type === 'choices'
        ? node.choices.map((choice) => valueWords(node.list, choice))
        : [];
    return [key, ...choices];
  });
}

const expectWords = (keys: readonly string[]): void =>
  expect(keys.filter((key) => !hasWords(key))).toEqual([]);

describe('the catalogue', () => {
  it.each(Object.values(specs).map((spec) => [spec.kind, spec] as const))(
    'has every word of the form %s',
    (kind, spec) => {
      expectWords(keysOf(kind, spec.nodes));
    },
  );

  it('has every kind, stage, proof, step, cause and type', () => {
    expectWords(kinds.map((kind) => `kind.${kind}`));
    expectWords(stages.map((stage) => `stage.${stage}`));
    expectWords(proofs.map((proof) => `proof.${proof}`));
    expectWords(procedureSteps.flatMap((step) => [`step.${step}`, `step.${step}.caution`]));
    expectWords([...outageCauses, 'strike'].map((cause) => `value.outageCause.${cause}`));
    expectWords(hydrantTypes.map((type) => `value.hydrantType.${type}`));
  });

  it('has every choice of every list that a schema knows', () => {
    // A choice that a schema gains without a word would be drawn in brackets.
    expectWords(forms.outage.body.shape.cause.options.map((cause) => valueWords('outageCause', cause)));
    expectWords(
      forms['claim-opened'].body.shape.payerKind.options.map((kind) => valueWords('payerKind', kind)),
    );
    expectWords(
      forms['expected-return'].body.shape.waitingFor.options.map((each) => valueWords('waitingFor', each)),
    );
  });

  it('is written in Spanish, not copied from English', () => {
    const alike = Object.keys(en).filter(
      (key) =>
        /^(form|section|field|kind|value|step|stage|outbox|screen|strike|missing|claim|desk|crew|hydrant|story|photo|caution|intro)\./.test(
          key,
        ) && en[key as keyof typeof en] === es[key as keyof typeof es],
    );
    // Words that both languages write alike.
    expect(alike.sort()).toEqual([
      'claim.subtotal',
      'claim.total',
      'outbox.written',
      'value.channel.fax',
      'value.demandHow.fax',
      'value.hazard.gas',
      'value.seen.no',
      'value.torqueUnit.N.m',
      'value.torqueUnit.kgf.m',
      'value.wrenchUnit.in',
      'value.wrenchUnit.mm',
    ]);
  });

  it('says a plural in both', () => {
    expect(say('en', 'form.problems', { count: 1 })).toBe('One thing to put right');
    expect(say('es', 'form.problems', { count: 3 })).toBe('3 cosas por corregir');
  });
});
