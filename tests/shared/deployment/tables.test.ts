import { describe, expect, it } from 'vitest';
import { correctionEntry, factEntry, tables } from '../../../shared/deployment/tables.ts';

/** Written out: data already stored stand under these names, so a change here orphans them. */
describe('tables and keys', () => {
  it('stay as they are', () => {
    expect(tables).toEqual({
      submissions: {
        logicalId: 'SubmissionsTable',
        environment: 'SUBMISSIONS_TABLE',
        partitionKey: 'stream',
        sortKey: 'entry',
      },
      personal: {
        logicalId: 'PersonalTable',
        environment: 'PERSONAL_TABLE',
        partitionKey: 'stream',
        sortKey: 'entry',
      },
      projections: {
        logicalId: 'ProjectionsTable',
        environment: 'PROJECTIONS_TABLE',
        partitionKey: 'partition',
        sortKey: 'key',
      },
      unique: {
        logicalId: 'UniqueTable',
        environment: 'UNIQUE_TABLE',
        partitionKey: 'space',
        sortKey: 'name',
      },
      outbox: {
        logicalId: 'OutboxTable',
        environment: 'OUTBOX_TABLE',
        partitionKey: 'box',
        sortKey: 'entry',
      },
      unprojected: {
        logicalId: 'UnprojectedTable',
        environment: 'UNPROJECTED_TABLE',
        partitionKey: 'space',
        sortKey: 'mark',
      },
    });
  });

  const id = '018f3c2a-0000-7000-8000-000000000001';
  it('give a fact its own id and a correction its target’s', () => {
    expect(factEntry(id)).toBe('018f3c2a-0000-7000-8000-000000000001');
    expect(correctionEntry(id)).toBe('corrects:018f3c2a-0000-7000-8000-000000000001');
  });

  it('never let a correction’s key be a fact’s', () => {
    expect(correctionEntry(id)).not.toBe(factEntry(id));
    expect(correctionEntry(id)).toMatch(/^corrects:/);
  });
});
