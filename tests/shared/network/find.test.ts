import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareWithField } from '../../../shared/network/compare.ts';
import { findNode } from '../../../shared/network/findNode.ts';
import type { PlainModel } from '../../../shared/network/plainModel.ts';
import { place, type ModelMap } from '../../../shared/network/question.ts';
import { cutOff } from '../../../shared/network/reach.ts';
import { evaluateFlowTest } from '../../../shared/hydraulics/evaluateFlowTest.ts';
import { problemsFromZod } from '../../../shared/problems/fromZod.ts';

/** Corner of the zone and 1,000 US survey feet from it: EPSG:2263, New York Long Island, in feet. */
const model: PlainModel = {
  nodes: [
    { nodeId: 'A', kind: 'junction', x: 984250, y: 200000 },
    { nodeId: 'B', kind: 'junction', x: 985250, y: 200000 },
    { nodeId: 'T', kind: 'tank', x: 984260, y: 200000 },
    { nodeId: 'N', kind: 'junction', x: null, y: null },
  ],
  links: [],
};
const map = (more: Partial<ModelMap> = {}): ModelMap => ({ withinFt: 300, ...more });

describe('the node of a hydrant', () => {
  it('by name', () =>
    expect(findNode(model, { nodeId: 'B' }, undefined, 'at')).toEqual({
      nodeId: 'B',
      hydrantId: null,
      distanceFt: null,
    }));

  it('by the list of hydrants', () =>
    expect(findNode(model, { hydrantId: 'H-1' }, map({ nodeOf: { 'H-1': 'A' } }), 'at')).toMatchObject({
      nodeId: 'A',
      hydrantId: 'H-1',
    }));

  it('a list that names a node that is not there', () =>
    expect(findNode(model, { hydrantId: 'H-1' }, map({ nodeOf: { 'H-1': 'Z' } }), 'at')).toMatchObject({
      code: 'no-such-node',
      path: 'map.nodeOf.H-1',
    }));

  it('by the nearest point of the model’s map, tanks left out', () =>
    expect(findNode(model, { x: 984262, y: 200001 }, undefined, 'at')).toMatchObject({ nodeId: 'A' }));

  // EPSG:2263's false origin: x 984250 ft lies on 74° W; y 200000 ft about 40.71° N (EPSG registry, from memory).
  it('by position, over the model’s coordinate system', () => {
    const found = findNode(
      model,
      { hydrantId: 'H-1', latitudeDeg: 40.71563, longitudeDeg: -74 },
      map({ crs: 'EPSG:2263' }),
      'at',
    );
    expect(found).toMatchObject({ nodeId: 'A', hydrantId: 'H-1' });
    expect('distanceFt' in found && found.distanceFt).toBeLessThan(60);
  });

  it.each<[string, Parameters<typeof findNode>[1], ModelMap | undefined, object]>([
    [
      'too far',
      { latitudeDeg: 40.8, longitudeDeg: -74 },
      map({ crs: 'EPSG:2263' }),
      { code: 'no-node-near', path: 'at' },
    ],
    [
      'no system stated',
      { latitudeDeg: 40.7, longitudeDeg: -74 },
      undefined,
      { code: 'model-needs-crs', path: 'at' },
    ],
    ['no such system', { latitudeDeg: 40.7, longitudeDeg: -74 }, map({ crs: 'EPSG:1' }), { path: 'map.crs' }],
    ['a source', { nodeId: 'T' }, undefined, { code: 'node-is-a-source', path: 'at.nodeId' }],
    [
      'a hydrant that nobody listed',
      { hydrantId: 'H-9' },
      map(),
      { code: 'hydrant-not-in-model', path: 'at.hydrantId' },
    ],
  ])('%s', (_, where, stated, expected) =>
    expect(findNode(model, where, stated, 'at')).toMatchObject(expected),
  );

  it('a model without coordinates', () =>
    expect(findNode({ nodes: [model.nodes[3]!], links: [] }, { x: 0, y: 0 }, undefined, 'at')).toMatchObject({
      code: 'model-has-no-map',
    }));

  it.each<[object, string[]]>([
    [{}, ['nodeId place-needs-one']],
    [{ latitudeDeg: 40 }, ['longitudeDeg required']],
    [{ x: 1 }, ['y required']],
    [{ nodeId: 'A' }, []],
  ])('a place %o', (given, expected) => {
    const parsed = place.safeParse(given, { reportInput: true });
    expect(
      parsed.success ? [] : problemsFromZod(parsed.error.issues).map(({ path, code }) => `${path} ${code}`),
    ).toEqual(expected);
  });
});

describe('cut off', () => {
  const line = (count: number): PlainModel => ({
    nodes: [
      { nodeId: 'R', kind: 'reservoir', x: null, y: null },
      ...Array.from({ length: count }, (_, index) => ({
        nodeId: `J${index}`,
        kind: 'junction' as const,
        x: null,
        y: null,
      })),
    ],
    links: Array.from({ length: count }, (_, index) => ({
      linkId: `P${index}`,
      from: index === 0 ? 'R' : `J${index - 1}`,
      to: `J${index}`,
    })),
  });

  it('a line closed at a pipe loses all beyond it, whatever the direction of its pipes', () =>
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.nat(),
        fc.array(fc.boolean(), { minLength: 60, maxLength: 60 }),
        (count, at, turned) => {
          const straight = line(count);
          const mixed = {
            ...straight,
            links: straight.links.map((link, index) =>
              turned[index] ? { ...link, from: link.to, to: link.from } : link,
            ),
          };
          const closed = at % count;
          expect([...cutOff(mixed, new Set([`P${closed}`]))].sort()).toEqual(
            Array.from({ length: count - closed }, (_, index) => `J${closed + index}`).sort(),
          );
        },
      ),
    ));

  it('closing more never reconnects anything', () =>
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(11), fc.nat(11)), { maxLength: 30 }),
        fc.array(fc.nat(29)),
        fc.nat(29),
        (pairs, first, more) => {
          const grid: PlainModel = {
            nodes: Array.from({ length: 12 }, (_, index) => ({
              nodeId: String(index),
              kind: index === 0 ? 'tank' : 'junction',
              x: null,
              y: null,
            })),
            links: pairs.map(([from, to], index) => ({
              linkId: String(index),
              from: String(from),
              to: String(to),
            })),
          };
          const closed = new Set(first.map(String));
          const before = cutOff(grid, closed);
          const after = cutOff(grid, new Set([...closed, String(more)]));
          for (const nodeId of before) expect(after.has(nodeId)).toBe(true);
          expect(after.has('0')).toBe(false);
        },
      ),
    ));

  it('a network with no source is all cut off', () =>
    expect(
      cutOff({ nodes: [{ nodeId: 'J', kind: 'junction', x: null, y: null }], links: [] }, new Set()),
    ).toEqual(new Set(['J'])));
});

describe('the model beside the field', () => {
  const test = evaluateFlowTest({ staticPsi: 86, residualPsi: 42, measuredFlowGpm: 789 });
  it.each([
    [982, 'agree'],
    [700, 'model-lower'],
    [1400, 'model-higher'],
  ])('%d gpm: %s', (flowGpm, verdict) =>
    expect(compareWithField(test, { flowGpm, residualPsi: 20 })?.verdict).toBe(verdict),
  );
  it('says nothing across two residuals, or of a test that rates nothing', () => {
    expect(compareWithField(test, { flowGpm: 982, residualPsi: 30 })).toBeNull();
    const small = evaluateFlowTest({ staticPsi: 90, residualPsi: 85, measuredFlowGpm: 1140 });
    expect(compareWithField(small, { flowGpm: 982, residualPsi: 20 })).toBeNull();
  });
});
