import type { IncomingMessage } from 'node:http';
import { role as roleSchema, roles, type Member, type Role } from '../../shared/roles.ts';
import { say, type Locale } from '../../shared/words/index.ts';
import { answer, type Answer } from './answer.ts';
import { answerEvidence, EVIDENCE_PATH, type EvidenceFiles } from './evidenceFiles.ts';
import { startPage, type Issuer } from './issuer.ts';

export interface LocalRoutes {
  readonly issuer: Issuer;
  readonly members: Readonly<Record<Role, Member>>;
  readonly evidence: EvidenceFiles;
  readonly instance: string;
  /** Whether whoever started the server let other machines in (`HOST`), who know it by other names. */
  readonly openToOthers: boolean;
  readonly locale: Locale;
}

export const KEYS_PATH = '/local/jwks.json';
export const INSTANCE_PATH = '/local/instance';
const SIGN_IN_PATH = '/local/sign-in';
/** The site stores the token it finds in the fragment, which no server ever sees, under this key of localStorage. */
export const TOKEN_KEY = 'hsl.token';

export const signInPath = (role: Role): string => `${SIGN_IN_PATH}?role=${role}`;

/** What only this runner has: the development issuer, the file-backed evidence, and who is answering here. */
export async function answerLocal(request: IncomingMessage, url: URL, local: LocalRoutes): Promise<Answer> {
  const { pathname } = url;
  if (pathname.startsWith(`${EVIDENCE_PATH}/`))
    return answerEvidence(request, pathname.slice(EVIDENCE_PATH.length + 1), local.evidence);
  if (request.method !== 'GET' && request.method !== 'HEAD') return answer(405, { allow: 'GET, HEAD' });
  switch (pathname) {
    case KEYS_PATH:
      return answer(
        200,
        { 'content-type': 'application/jwk-set+json', 'cache-control': 'no-store' },
        JSON.stringify(local.issuer.keySet),
      );
    case INSTANCE_PATH:
      return answerInstance(local.instance);
    case SIGN_IN_PATH:
      // Another name for this machine is how a page elsewhere would reach in (DNS rebinding); the issuer gives to anyone.
      if (!local.openToOthers && !isThisMachine(request.headers.host))
        return plain(403, 'Only by this machine\u2019s own name.');
      return signIn(url.searchParams.get('role'), local);
    default:
      return plain(404, 'not found');
  }
}

/** Says which server this is, to whoever found its address in a data folder. */
export const answerInstance = (instance: string): Answer =>
  answer(200, { 'content-type': 'text/plain', 'cache-control': 'no-store' }, instance);

async function signIn(role: string | null, { issuer, members, locale }: LocalRoutes): Promise<Answer> {
  const asked = roleSchema.safeParse(role);
  if (asked.success) {
    const token = await issuer.tokenFor(members[asked.data]);
    return answer(302, { location: `${startPage[asked.data]}#token=${token}`, 'cache-control': 'no-store' });
  }
  const links = roles.map(
    (each) =>
      `<li><a href="${signInPath(each)}">${say(locale, `role.${each}`)}: ${escapeHtml(members[each].name)}</a></li>`,
  );
  const title = say(locale, 'command.sign-in-title');
  return answer(
    role === null ? 200 : 404,
    { 'content-type': 'text/html; charset=utf-8', 'cache-control': 'no-store' },
    `<!doctype html><html lang="${locale}"><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${title}</title><h1>${title}</h1><ul>${links.join('')}</ul></html>`,
  );
}

const plain = (status: number, text: string): Answer =>
  answer(status, { 'content-type': 'text/plain; charset=utf-8' }, text);

export function isThisMachine(host: string | undefined): boolean {
  return /^(localhost|127\.0\.0\.1|\[::1\])(:\d+)?$|^::1$/i.test(host ?? '');
}

const escapeHtml = (text: string): string =>
  text.replaceAll(
    /[&<>"]/g,
    (mark) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[mark] ?? mark,
  );
