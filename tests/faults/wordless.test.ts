import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { inspect } from 'node:util';
import * as z from 'zod';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { describeError } from '../../functions/log/log.ts';
import { OperatorFault, wordless } from '../../functions/log/wordless.ts';
import { StoreUnavailable } from '../../functions/stores/faults.ts';

/**
 * What a function throws, the platform writes into the log by itself, message and fields and all. So nothing that a
 * person typed may be in what leaves a function, whoever wrote the words: a driver, a parser, or we.
 */
const word = 'Ann Qxample';
/** As a driver of databases throws: the item it was refused is one of the error's fields. */
const driverFault = (): Error =>
  Object.assign(new Error(`item ${word}:\n    at ${word} (/kerb/${word}.ts:1:2)\n    at 12:30:15`), {
    Item: { reporter: { S: word } },
    cause: new RangeError(word),
    code: 'ECONDITION',
  });

const wiring = vi.hoisted(() => ({ fault: (): Error => new Error('none') }));
// Every way to a store, a service or a setting fails, so that each function fails at the first thing it needs.
vi.mock('../../functions/wiring.ts', async (original) =>
  Object.fromEntries(
    Object.keys(await original<object>()).map((name) => [
      name,
      () => {
        throw wiring.fault();
      },
    ]),
  ),
);
beforeEach(() => {
  wiring.fault = driverFault;
});

/** Everything that can be read from an error, as the platform's own writing of it or a debugger would. */
const allOf = (error: unknown): string =>
  `${inspect(error, { depth: 9, showHidden: true })} ${(error as Error).stack}`;

const functionsFolder = join(import.meta.dirname, '..', '..', 'functions');
const names = readdirSync(functionsFolder, { recursive: true, encoding: 'utf8' })
  .filter((file) => /^[^/\\]+[/\\]handler\.ts$/.test(file))
  .map((file) => file.split(/[/\\]/)[0]!);

describe('what a function throws', () => {
  it('is looked at in every function that is deployed', () => {
    expect(names.length).toBeGreaterThanOrEqual(14);
  });

  it.each(names)('holds nobody’s words: %s', async (name) => {
    const { handler } = (await import(join(functionsFolder, name, 'handler.ts'))) as {
      handler: (event: unknown) => Promise<unknown>;
    };
    const events = [
      { [word]: word },
      { Records: [{ dynamodb: { Keys: { stream: { S: `strike:${word}` } }, SequenceNumber: '1' } }] },
      {
        claimId: word,
        jobId: word,
        member: { personId: word, name: word, roles: ['clerk'] },
        request: { mode: 'freeze' },
      },
    ];
    for (const event of events) {
      const error = await handler(event).then(
        () => null,
        (thrown: unknown) => thrown,
      );
      expect(error).toBeInstanceOf(Error);
      expect(allOf(error)).not.toContain(word);
      // Still says what kind of thing broke and where.
      expect((error as Error).stack).toMatch(/\n {4}at .+:\d+:\d+/);
    }
  });

  it('keeps its name, its code and its place', async () => {
    const failing = wordless(async () => {
      throw Object.assign(new StoreUnavailable(word, { cause: new RangeError(word) }), {
        code: 'ECONNRESET',
      });
    });
    const error = await failing().catch((thrown: unknown) => thrown);
    expect(error).toMatchObject({
      name: 'StoreUnavailable',
      code: 'ECONNRESET',
      message: 'failed, caused by RangeError',
    });
    expect((error as Error).stack).toContain('wordless.test.ts');
    expect(allOf(error)).not.toContain(word);
  });

  it('is said in full where it is for whoever runs the system, as of a setting', async () => {
    const fault = new OperatorFault('no key signs packets here');
    await expect(
      wordless(async () => {
        throw fault;
      })(),
    ).rejects.toBe(fault);
  });
});

describe('an error in a log line', () => {
  // A message of several lines stands in the stack, and the second of these looks like a place in a file.
  const texts = [
    word,
    `x\n    at ${word}`,
    `x\n    at ${word} (/a/${word}.ts:1:2)`,
    `{"a":\n  at ${word}\n}`,
  ];
  it.each(texts)('holds nothing of its message, whatever lines that has: %j', (text) => {
    const parsing = (): unknown => {
      try {
        return JSON.parse(text);
      } catch (error) {
        return error;
      }
    };
    const faults = [
      new Error(text),
      new StoreUnavailable(text, { cause: new Error(text) }),
      parsing(),
      new AggregateError([new Error(text)], text),
      z.object({ [text]: z.literal(text) }).safeParse({}).error,
      text,
      { [text]: text },
    ];
    for (const fault of faults) expect(JSON.stringify(describeError(fault))).not.toContain(word);
    expect(describeError(faults[0])).toMatchObject({ errorName: 'Error' });
    expect(describeError(faults[0]).errorAt).toContain('wordless.test.ts');
  });

  it('whose message was changed later still holds none of either', () => {
    const fault = new Error(`x\n    at ${word}\n    at 12:30:15, ${word}`);
    fault.message = 'another';
    expect(JSON.stringify(describeError(fault))).not.toContain(word);
  });
});
