import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { S3Client } from '@aws-sdk/client-s3';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { projectStream } from '../../functions/project/project.ts';
import { publishOnce, PublicationRefused } from '../../functions/publish/publish.ts';
import { dynamodbClient } from '../../functions/stores/dynamodb/client.ts';
import { dynamodbStores } from '../../functions/stores/dynamodb/stores.ts';
import { s3Objects } from '../../functions/stores/objects/s3.ts';
import { waits } from '../../functions/stores/patience.ts';
import { memoryPublished } from '../../functions/stores/published/memoryPublished.ts';
import {
  localTableNames,
  setCredentials,
  startDynamodb,
  type EmbeddedDynamodb,
} from '../../infra/local/dynamodb.ts';
import { streamOfSubmission } from '../../shared/submissions/submission.ts';
import { kept, world } from '../projections/support.ts';
import { aPublisher } from '../support/aPublisher.ts';
import { at, fact, onStrike } from '../support/submissions.ts';
import { inventoryOf, aHydrant, townSettings } from '../support/town.ts';

/** A function whose clock is wrong. AWS refuses a request that was signed by a clock five minutes off. */
const hour = 3_600_000;
const tolerance = 5 * 60_000;
const right = Date.now();
const began = performance.now();
/** The time as the services have it, whatever `Date` says in this process. */
const trueNow = (): number => right + performance.now() - began;

/** When a request says that it was signed (Signature Version 4: `20260304T120000Z`). */
const signedAt = ({ headers }: IncomingMessage): number =>
  Date.parse(
    String(headers['x-amz-date']).replace(/^(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)(\d\d)Z$/, '$1-$2-$3T$4:$5:$6Z'),
  );

afterEach(() => void vi.useRealTimers());
const clockOff = (milliseconds: number): void => {
  vi.useFakeTimers({ toFake: ['Date'], now: right + milliseconds });
};

describe('a clock that is an hour wrong', () => {
  let dynamodb: EmbeddedDynamodb;
  let servers: Server[] = [];
  let refused = 0;

  /** Refuses as the service does, and says what time it is. */
  function guarded(
    refusal: { status: number; type: string; body: string },
    answer: (request: IncomingMessage, response: ServerResponse) => void,
  ): Promise<string> {
    const server = createServer((request, response) => {
      response.setHeader('date', new Date(trueNow()).toUTCString());
      if (Math.abs(signedAt(request) - trueNow()) <= tolerance) return answer(request, response);
      refused += 1;
      request.resume();
      response.writeHead(refusal.status, { 'content-type': refusal.type }).end(refusal.body);
    });
    servers.push(server);
    return new Promise((resolve) =>
      server.listen(0, '127.0.0.1', () =>
        resolve(`http://127.0.0.1:${(server.address() as AddressInfo).port}`),
      ),
    );
  }

  beforeAll(async () => {
    setCredentials();
    dynamodb = await startDynamodb({ folder: null, port: 0 });
  });
  afterAll(async () => {
    for (const server of servers) {
      server.closeAllConnections();
      server.close();
    }
    servers = [];
    await dynamodb.stop();
  });

  it.each([hour, -hour])(
    '(%s ms): the table refuses the first signature, the SDK sets itself right, and the fact is taken once',
    async (off) => {
      const endpoint = await guarded(
        {
          status: 400,
          type: 'application/x-amz-json-1.0',
          body: JSON.stringify({
            __type: 'com.amazon.coral.service#InvalidSignatureException',
            message: 'Signature not yet current',
          }),
        },
        (request, response) => {
          const chunks: Buffer[] = [];
          request.on('data', (chunk: Buffer) => chunks.push(chunk));
          request.on('end', () => {
            const {
              'content-length': _,
              host: __,
              connection: ___,
              ...headers
            } = request.headers as Record<string, string>;
            void fetch(dynamodb.endpoint, { method: 'POST', headers, body: Buffer.concat(chunks) }).then(
              async (reply) =>
                response
                  .writeHead(reply.status, { 'content-type': 'application/x-amz-json-1.0' })
                  .end(Buffer.from(await reply.arrayBuffer())),
            );
          });
        },
      );
      clockOff(off);
      refused = 0;
      const client = dynamodbClient(endpoint, {
        maxAttempts: 4,
        connectionTimeoutMs: 5000,
        requestTimeoutMs: 30_000,
      });
      const { ledger } = dynamodbStores(client, localTableNames);
      const sent = fact('party', off > 0 ? 1 : 2, onStrike(off > 0 ? 1 : 2));
      const delivery = { recordedAt: new Date().toISOString(), deliveredBy: null };
      expect(await ledger.accept(sent, delivery)).toMatchObject({ outcome: 'accepted' });
      expect(await ledger.accept(sent, delivery)).toMatchObject({ outcome: 'repeat' });
      expect(refused).toBe(1);
      client.destroy();
    },
  );

  it('the object store likewise (RequestTimeTooSkewed)', async () => {
    const endpoint = await guarded(
      {
        status: 403,
        type: 'application/xml',
        body: '<Error><Code>RequestTimeTooSkewed</Code><Message>The difference is too large.</Message></Error>',
      },
      (request, response) => {
        request.resume();
        response.writeHead(200, { 'content-length': '3', 'content-type': 'text/plain' }).end('yes');
      },
    );
    clockOff(hour);
    refused = 0;
    const objects = s3Objects(
      'bucket',
      '',
      new S3Client({ endpoint, region: 'us-east-1', forcePathStyle: true, ...waits() }),
    );
    expect(Buffer.from((await objects.get('key'))!.bytes).toString()).toBe('yes');
    expect(refused).toBe(1);
  });
});

describe('what a wrong clock of ours does to what is kept', () => {
  const night = [
    fact('strike', 1, onStrike(1), { hydrantId: 'A' }),
    fact('valve-operation', 2, onStrike(1)),
    fact('strike', 3, onStrike(2), { hydrantId: 'B' }),
  ];
  /** The same facts, each recorded by a clock that is so far off. */
  async function recordedBy(offsMs: readonly number[]) {
    const one = world();
    for (const [index, submission] of night.entries()) {
      const recordedAt = new Date(Date.parse(at(240)) + (offsMs[index] ?? 0)).toISOString();
      await one.ledger.accept(submission, { recordedAt, deliveredBy: null });
      await projectStream(one, streamOfSubmission(submission));
    }
    // When it was recorded is kept as it was recorded; what is made of it is compared.
    const times = new Set(offsMs.map((off) => new Date(Date.parse(at(240)) + off).toISOString()));
    return JSON.parse(JSON.stringify(await kept(one)), (_, value: unknown) =>
      typeof value === 'string' && times.has(value) ? 'as recorded' : value,
    ) as unknown;
  }

  it('a clock within the ten minutes that a phone’s is given changes no status, whichever function’s it is', async () => {
    const sound = await recordedBy([0, 0, 0]);
    for (const offs of [
      [600_000, -600_000, 0],
      [-600_000, 600_000, 0],
      [0, 600_000, -600_000],
    ])
      expect(await recordedBy(offs)).toEqual(sound);
  });

  it('a publisher whose clock is behind what stands published refuses, and the page stays', async () => {
    const store = memoryPublished();
    const sources = {
      inventory: inventoryOf([aHydrant('A')]),
      statuses: [],
      strikes: [],
      flowTests: new Map(),
    };
    const publisher = aPublisher(store, sources, townSettings);
    await publishOnce(publisher, new Date(right));
    const before = new Map(store.objects);
    const behind = publishOnce(publisher, new Date(right - 2 * 60_000));
    await expect(behind).rejects.toBeInstanceOf(PublicationRefused);
    await expect(behind).rejects.toMatchObject({ problems: [{ code: 'clock-behind' }] });
    expect(new Map(store.objects)).toEqual(before);
  });
});
