import { expect, it } from 'vitest';
import { statementOf } from '../../shared/costs/statement.ts';
import { packetDocument } from '../../shared/packet/document.ts';
import { demoCase, demoClaim, demoContent } from '../support/demoClaim.ts';

it('a credit has an amount and no rate: nothing says that a rate was looked for and not found', async () => {
  const { work: demo, editions } = demoCase(demoClaim());
  const credit = {
    submissionId: '019ebb64-6c4a-702c-a115-6f5faf297e2c',
    title: 'Salvage',
    amountCents: 12_00,
    arithmetic: '-$12.00',
  };
  const work = { ...demo, credits: [credit] };
  const { content } = await demoContent(demoClaim(), { work, statement: statementOf(work, editions) });
  const rows = packetDocument(content).blocks.flatMap((block) => (block.type === 'table' ? block.rows : []));
  const row = rows.find(({ cells }) => JSON.stringify(cells).includes('Credit: Salvage'));
  expect(row?.cells.slice(2)).toEqual(['', '-$12.00']);
});
