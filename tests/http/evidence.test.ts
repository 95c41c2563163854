import { connect } from 'node:net';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { answerEvidence } from '../../infra/local/evidenceFiles.ts';
import { listen, type Listening } from '../../infra/local/server.ts';
import { displayCopyOf } from '../../functions/evidence/displayCopies.ts';
import { append } from '../../functions/submissions/append.ts';
import { evidenceKey, UPLOAD_SECONDS } from '../../functions/stores/evidence/byHash.ts';
import { tokenLinks } from '../../functions/stores/evidence/tokenLinks.ts';
import { routes } from '../../shared/deployment/routes.ts';
import type { EvidenceAddress } from '../../shared/evidence/address.ts';
import type { Role } from '../../shared/roles.ts';
import type { Exhibit } from '../../shared/submissions/fields.ts';
import { correction, fact, onClaim, onStrike, uuid } from '../support/submissions.ts';
import { secret, sha256, testWorld, type World } from './support/world.ts';
import { exifBlock } from '../support/exifBlock.ts';
import { heicFile } from '../support/heicFile.ts';
import { ports } from '../support/ports.ts';

let world: World;
let server: Listening;
let origin: string;
/** Keys of what came, as the store tells. */
const arrived: string[] = [];
const photo = Buffer.from('bytes of a photo');
const exhibit = (bytes: Uint8Array): Exhibit => ({
  sha256: sha256(bytes),
  bytes: bytes.length,
  mediaType: 'image/jpeg',
  takenAt: null,
  view: 'overall',
  caption: null,
});

beforeAll(async () => {
  world = await testWorld();
  server = await listen({ port: ports.evidence, host: '127.0.0.1', log: () => undefined, locale: 'en' });
  origin = `http://127.0.0.1:${server.port}`;
  server.open((request, url) =>
    answerEvidence(request, url.pathname.slice('/local/evidence/'.length), {
      objects: world.objects,
      secret,
      now: () => new Date(),
      arrived: (key) => void arrived.push(key),
    }),
  );
});
afterAll(() => server.close());

interface Upload {
  url: string;
  headers: Record<string, string>;
}
/** Declares these bytes in a strike and asks where to send them. */
let strikes = 0;
async function target(bytes: Uint8Array): Promise<Upload> {
  strikes += 1;
  const strike = fact('strike', strikes, onStrike(strikes), { photos: [exhibit(bytes)] });
  await world.submit('crew', strike);
  const answer = await world.ask('/api/evidence/uploads', 'crew', {
    body: { subject: strike.subject, submissionId: strike.submissionId, sha256: sha256(bytes) },
  });
  expect(answer).toMatchObject({ status: 200, body: { state: 'awaited' } });
  return answer.body['upload'] as Upload;
}
const put = (upload: Upload, bytes: Uint8Array, headers = upload.headers) =>
  fetch(origin + upload.url, { method: 'PUT', headers, body: Buffer.from(bytes) });

describe('where to send a photo', () => {
  it('is told only for what a stored submission declares', async () => {
    const strike = fact('strike', 900, onStrike(900), { photos: [exhibit(photo)] });
    const ask = (over: object) =>
      world.ask('/api/evidence/uploads', 'crew', {
        body: { subject: strike.subject, submissionId: strike.submissionId, sha256: sha256(photo), ...over },
      });
    expect(await ask({})).toMatchObject({
      status: 404,
      body: { problems: [{ code: 'no-such-submission' }] },
    });
    await world.submit('crew', strike);
    expect(await ask({})).toMatchObject({
      status: 200,
      body: { state: 'awaited', upload: { method: 'PUT' } },
    });
    expect(await ask({ sha256: 'b'.repeat(64) })).toMatchObject({
      status: 422,
      body: { problems: [{ code: 'exhibit-not-declared', path: 'sha256' }] },
    });
    expect(await ask({ subject: onStrike(901) })).toMatchObject({ status: 404 });
    expect(await ask({ submissionId: uuid(12345) })).toMatchObject({ status: 404 });
    expect((await ask({ sha256: 'no', extra: 1 })).body.problems.map(({ path }) => path).sort()).toEqual([
      'extra',
      'sha256',
    ]);
  });

  it('is told for a photo that a correction adds', async () => {
    const added = Buffer.from('added later');
    const strike = fact('strike', 910, onStrike(910), { photos: [] });
    await world.submit('crew', strike);
    const fixed = correction(911, strike, { ...strike.body, photos: [exhibit(added)] });
    await world.submit('crew', fixed);
    expect(
      await world.ask('/api/evidence/uploads', 'crew', {
        body: { subject: strike.subject, submissionId: fixed.submissionId, sha256: sha256(added) },
      }),
    ).toMatchObject({ status: 200 });
  });
});

describe('a paper of the desk', () => {
  const bytes = Buffer.from('a police report');
  const paper = fact('documents', 920, onStrike(920), {
    documents: [{ ...exhibit(bytes), what: 'police-report', title: 'Report', number: null } as never],
  });
  const ask = (
    role: 'crew' | 'clerk',
    { subject, submissionId }: Pick<typeof paper, 'subject' | 'submissionId'>,
  ) =>
    world.ask('/api/evidence/uploads', role, {
      body: { subject, submissionId, sha256: sha256(bytes) },
    });

  it('is no business of a crew’s: asked for an upload, or named again, it is as if nobody had it', async () => {
    expect((await world.submit('clerk', paper)).status).toBe(201);
    const upload = (await ask('clerk', paper)).body['upload'] as Upload;
    expect((await put(upload, bytes)).status).toBe(200);
    expect((await ask('clerk', paper)).body).toEqual({ state: 'arrived' });
    expect(await ask('crew', paper)).toMatchObject({
      status: 404,
      body: { problems: [{ code: 'no-such-submission' }] },
    });
    const strike = fact('strike', 930, onStrike(930), { photos: [exhibit(bytes)] });
    await world.submit('crew', strike);
    expect(await ask('crew', strike)).toMatchObject({ status: 200, body: { state: 'awaited' } });
    expect((await world.ask(`/api/evidence/${sha256(bytes)}`, 'crew')).status).toBe(404);
    expect((await world.ask(`/api/evidence/${sha256(bytes)}`, 'clerk')).status).toBe(200);
    const { body } = await world.ask(`/api/strikes/${uuid(930)}`, 'crew');
    expect(body['evidence']).toEqual({ [sha256(bytes)]: 'awaited' });
  });
});

describe('sending it', () => {
  it('keeps exactly the declared bytes, once', async () => {
    const bytes = Buffer.from('kept');
    const upload = await target(bytes);
    expect((await put(upload, bytes)).status).toBe(200);
    expect(Buffer.from((await world.objects.get(evidenceKey(sha256(bytes))))!.bytes).toString()).toBe('kept');
    expect((await put(upload, bytes)).status).toBe(412);
    const again = await world.ask('/api/evidence/uploads', 'crew', {
      body: { subject: onStrike(strikes), submissionId: uuid(strikes), sha256: sha256(bytes) },
    });
    expect(again.body).toEqual({ state: 'arrived' });
  });

  const refused: [string, (upload: Upload, bytes: Buffer) => Promise<Response>, number][] = [
    [
      'other bytes of the same length',
      (upload, bytes) => put(upload, Buffer.from(bytes.map((byte) => byte ^ 1))),
      400,
    ],
    ['more bytes', (upload, bytes) => put(upload, Buffer.concat([bytes, bytes])), 403],
    ['fewer bytes', (upload, bytes) => put(upload, bytes.subarray(1)), 403],
    [
      'another type',
      (upload, bytes) => put(upload, bytes, { ...upload.headers, 'content-type': 'text/html' }),
      403,
    ],
    [
      'another hash',
      (upload, bytes) => put(upload, bytes, { ...upload.headers, 'x-amz-checksum-sha256': 'AAAA' }),
      403,
    ],
    [
      'leave to overwrite',
      (upload, bytes) =>
        put(
          upload,
          bytes,
          Object.fromEntries(Object.entries(upload.headers).filter(([name]) => name !== 'if-none-match')),
        ),
      403,
    ],
    [
      'a changed address',
      (upload, bytes) => put({ ...upload, url: `${upload.url.slice(0, -3)}abc` }, bytes),
      403,
    ],
    ['another method', (upload) => fetch(origin + upload.url, { method: 'DELETE' }), 405],
  ];
  it.each(refused)('refuses %s and keeps nothing', async (name, send, status) => {
    const bytes = Buffer.from(`photo for: ${name}`);
    const upload = await target(bytes);
    expect((await send(upload, bytes)).status).toBe(status);
    expect(await world.objects.head(evidenceKey(sha256(bytes)))).toBeNull();
    expect((await put(upload, bytes)).status).toBe(200);
  });

  it('cut off half way leaves nothing, and can be sent again', async () => {
    const bytes = Buffer.alloc(200_000, 7);
    const upload = await target(bytes);
    await new Promise<void>((resolve) => {
      const socket = connect(server.port, '127.0.0.1', () => {
        const headers = Object.entries({
          ...upload.headers,
          host: 'localhost',
          'content-length': String(bytes.length),
        });
        socket.write(
          `PUT ${upload.url} HTTP/1.1\r\n${headers.map(([name, value]) => `${name}: ${value}`).join('\r\n')}\r\n\r\n`,
        );
        socket.write(bytes.subarray(0, 100_000), () => setTimeout(() => socket.destroy(), 50));
      });
      socket.on('close', () => resolve());
      socket.on('error', () => undefined);
    });
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(await world.objects.head(evidenceKey(sha256(bytes)))).toBeNull();
    expect((await put(upload, bytes)).status).toBe(200);
  });
});

describe('written once', () => {
  it('no route of the API replaces or deletes an object', async () => {
    const bytes = Buffer.from('stays');
    await put(await target(bytes), bytes);
    expect(routes.filter(({ method }) => method !== 'GET' && method !== 'POST')).toEqual([]);
    for (const method of ['PUT', 'DELETE', 'PATCH', 'POST']) {
      const { status } = await world.ask(`/api/evidence/${sha256(bytes)}`, 'manager', { method });
      expect([404, 405]).toContain(status);
    }
    expect(Buffer.from((await world.objects.get(evidenceKey(sha256(bytes))))!.bytes).toString()).toBe(
      'stays',
    );
  });

  it('two senders of the same bytes at the same time: one is told that they are there', async () => {
    const bytes = Buffer.alloc(50_000, 3);
    const upload = await target(bytes);
    const answers = await Promise.all([put(upload, bytes), put(upload, bytes)]);
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 412]);
  });

  it('an address works for its own object alone: with another’s headers and bytes it is refused', async () => {
    const [one, two] = [Buffer.from('the first one'), Buffer.from('the second, longer')];
    const [first, second] = [await target(one), await target(two)];
    expect((await put({ url: first.url, headers: second.headers }, two)).status).toBe(403);
    expect((await put({ url: first.url, headers: first.headers }, two)).status).toBe(403);
    expect(await world.objects.head(evidenceKey(sha256(two)))).toBeNull();
  });

  it('an address works for a quarter of an hour and no longer', async () => {
    const bytes = Buffer.from('too late');
    const early = tokenLinks({
      base: '/local/evidence',
      secret,
      now: () => new Date(Date.now() - (UPLOAD_SECONDS + 5) * 1000),
    });
    const { url, headers } = await early.uploadTarget(evidenceKey(sha256(bytes)), exhibit(bytes));
    expect((await put({ url, headers: { ...headers } }, bytes)).status).toBe(403);
    expect(await world.objects.head(evidenceKey(sha256(bytes)))).toBeNull();
  });

  it.each(['..%2f..%2fetc%2fpasswd', '%2e%2e/%2e%2e/etc/passwd', 'a.b.c', '', 'x'.repeat(20_000)])(
    'a path in place of an address leads nowhere: %#',
    async (path) => {
      for (const method of ['GET', 'PUT'])
        expect(
          (
            await fetch(`${origin}/local/evidence/${path}`, {
              method,
              ...(method === 'PUT' ? { body: 'x' } : {}),
            })
          ).status,
        ).toBeGreaterThanOrEqual(400);
    },
  );

  it('tells of what came once it is there, and of nothing that was refused', async () => {
    const bytes = Buffer.from('told of');
    const upload = await target(bytes);
    arrived.length = 0;
    await put(upload, Buffer.from('TOLD OF'));
    expect(arrived).toEqual([]);
    await put(upload, bytes);
    await put(upload, bytes);
    expect(arrived).toEqual([evidenceKey(sha256(bytes))]);
  });
});

describe('reading it', () => {
  /** Where it is told to be read, by somebody who asks for it as it came or (`?as=display`) to be shown. */
  const addressOf = async (bytes: Uint8Array, role: Role, query = ''): Promise<EvidenceAddress> => {
    const { status, headers, body } = await world.ask(`/api/evidence/${sha256(bytes)}${query}`, role);
    expect(status).toBe(200);
    // A redirect would have some browsers hand the sign-in's token to the store.
    expect(headers.get('location')).toBeNull();
    return body as unknown as EvidenceAddress;
  };
  const fetched = async ({ url }: EvidenceAddress): Promise<Buffer> =>
    Buffer.from(await (await fetch(origin + url)).arrayBuffer());

  it('as a picture that any browser can draw, once its display copy is made', async () => {
    const heic = heicFile({ turns: 1, exif: exifBlock({ model: 'Kestrel 4' }) });
    await put(await target(heic), heic);
    // Until then the original: a browser that can draw it does.
    const before = await addressOf(heic, 'crew', '?as=display');
    expect(before).toMatchObject({ shows: 'original', undisplayable: null, said: null });
    expect((await fetched(before)).equals(heic)).toBe(true);
    await displayCopyOf(world.deps.evidence, sha256(heic));
    const copy = await addressOf(heic, 'crew', '?as=display');
    // With what the file says of its capture; what it does not say is null.
    const said = { place: 'HEIF Exif', device: 'Kestrel 4', cameraTime: null, cameraPosition: null };
    expect(copy).toMatchObject({ shows: 'display-copy', undisplayable: null, said });
    expect((await sharp(await fetched(copy)).metadata()).format).toBe('jpeg');
    const original = await addressOf(heic, 'crew');
    expect(original).toMatchObject({ shows: 'original', undisplayable: null, said: null });
    expect((await fetched(original)).equals(heic)).toBe(true);
    expect((await world.ask(`/api/evidence/${sha256(heic)}?as=display`, null)).status).toBe(401);
  });

  it('says why a picture has no copy that could be shown, and leads to it as it came', async () => {
    const large = heicFile({ claims: [40_000, 40_000] });
    await put(await target(large), large);
    await displayCopyOf(world.deps.evidence, sha256(large));
    const asked = await addressOf(large, 'crew', '?as=display');
    expect(asked).toMatchObject({ shows: 'original', undisplayable: 'too-large' });
    expect((await fetched(asked)).equals(large)).toBe(true);
  });

  it('leads every signed-in role to a short-lived address of a crew photo', async () => {
    const bytes = Buffer.from('to be read');
    await put(await target(bytes), bytes);
    for (const role of ['crew', 'clerk', 'manager'] as const) {
      const response = await fetch(origin + (await addressOf(bytes, role)).url);
      expect([response.status, response.headers.get('content-type'), await response.text()]).toEqual([
        200,
        'image/jpeg',
        'to be read',
      ]);
      expect(response.headers.get('content-disposition')).toBe(
        `inline; filename="${sha256(bytes).slice(0, 12)}.jpg"`,
      );
    }
    expect((await world.ask(`/api/evidence/${sha256(bytes)}`, null)).status).toBe(401);
  });

  it('says awaited, and not that it is nothing, while the bytes are on their way', async () => {
    const bytes = Buffer.from('on its way');
    await target(bytes);
    expect(await world.ask(`/api/evidence/${sha256(bytes)}`, 'crew')).toMatchObject({
      status: 404,
      body: { problems: [{ code: 'exhibit-awaited' }] },
    });
    expect(await world.ask(`/api/evidence/${'c'.repeat(64)}`, 'crew')).toMatchObject({
      status: 404,
      body: { problems: [{ code: 'no-such-exhibit' }] },
    });
    expect((await world.ask('/api/evidence/not-a-hash', 'crew')).status).toBe(404);
  });

  it('of a claim is the desk’s: crew gets the answer for what does not exist', async () => {
    const pdf = Buffer.from('%PDF-1.7 packet');
    await world.deps.evidence.put(pdf, 'application/pdf');
    const frozen = fact('packet-frozen', 950, onClaim(950), { pdfSha256: sha256(pdf), pdfBytes: pdf.length });
    await append(world.deps, frozen, { personId: 'clerk-1', name: 'C', roles: ['clerk'] });
    expect(await world.ask(`/api/evidence/${sha256(pdf)}`, 'crew')).toMatchObject({
      status: 404,
      body: { problems: [{ code: 'no-such-exhibit' }] },
    });
    const response = await fetch(origin + (await addressOf(pdf, 'clerk')).url);
    expect(response.headers.get('content-type')).toBe('application/pdf');
  });
});
