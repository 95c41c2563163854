import { describe, expect, it } from 'vitest';
import { checkForm } from '../../../site/src/app/form/check.ts';
import { decode } from '../../../site/src/app/form/decode.ts';
import { locateEntry } from '../../../site/src/app/form/locateEntry.ts';
import type { Node } from '../../../site/src/app/form/nodes.ts';
import { specOf } from '../../../site/src/app/form/specs/index.ts';

/** Names are paths in the body with dots between: what begins with the same letters is not what lies within. */
const zone = 'America/New_York';
const text = (name: string): Node => ({ type: 'text', name });

describe('a problem at one path', () => {
  it('hides none at a path that begins with the same letters', () => {
    const strike = specOf('strike')!;
    const spec = {
      ...strike,
      complete: (body: Record<string, unknown>) => ({ ...body, struckAtBasis: 'nonsense' }),
    };
    const checked = checkForm(spec, { hydrantId: 'A', struckAt: '2026-03-04' }, zone);
    const paths = checked.ok ? [] : checked.problems.map(({ path }) => path);
    expect(paths.toSorted()).toEqual(['struckAt', 'struckAtBasis']);
  });
});

describe('the field that a path points at', () => {
  const nodes = [text('found'), text('found.flow'), text('at')];
  it.each([
    ['found.flow', 'found.flow'],
    ['found.flow.unit', 'found.flow'],
    ['found.other', 'found'],
    ['found', 'found'],
    ['foundling', undefined],
  ])('%s: the one with the longest name that holds it, %s', (path, name) => {
    for (const given of [nodes, nodes.toReversed()])
      expect(locateEntry(given, {}, path)?.entry.name).toBe(name);
  });
});

describe('a recorded body opened as a form', () => {
  it('fills nothing that only steers the screen, though the body had such a name', () => {
    expect(decode([text('_from'), text('note')], { _from: 'figure', note: 'by the pier' }, zone)).toEqual({
      note: 'by the pier',
    });
  });
});
