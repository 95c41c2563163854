import * as z from 'zod';
import type { Row } from '../dynamodb/table.ts';

const attribute = z.union([z.string(), z.number(), z.strictObject({ base64: z.base64() })]);

/** A row of a table as JSON: its two keys, and its attributes with bytes as base64 (RFC 4648). */
export const rowJson = z.strictObject({
  key: z.tuple([z.string(), z.string()]),
  attributes: z.record(z.string(), attribute),
});
export type RowJson = z.infer<typeof rowJson>;

export const toRowJson = ({ partition, sort, attributes }: Row): RowJson => ({
  key: [partition, sort],
  attributes: Object.fromEntries(
    Object.entries(attributes).map(([name, value]) => [
      name,
      value instanceof Uint8Array ? { base64: Buffer.from(value).toString('base64') } : value,
    ]),
  ),
});

export const fromRowJson = ({ key: [partition, sort], attributes }: RowJson): Row => ({
  partition,
  sort,
  attributes: Object.fromEntries(
    Object.entries(attributes).map(([name, value]) => [
      name,
      typeof value === 'object' ? new Uint8Array(Buffer.from(value.base64, 'base64')) : value,
    ]),
  ),
});
