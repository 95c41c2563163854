import { exhibitLists } from '../../../../shared/evidence/declared.ts';
import type { Problem } from '../../../../shared/problems/problem.ts';
import { problem } from '../../../../shared/problems/problem.ts';
import type { Reader } from '../../../../shared/units/format.ts';
import { postJson } from '../core/api.ts';
import { deviceId } from '../core/device.ts';
import { dropDraft, type Draft } from '../core/drafts.ts';
import { preferences } from '../core/preferences.ts';
import type { Session } from '../core/session.ts';
import { loadUtilityWords, utility } from '../core/utility.ts';
import { recall } from '../core/recall.ts';
import { askToKeep } from '../offline/durable.ts';
import type { Entry } from '../outbox/database.ts';
import { keepEntry, readEntry } from '../outbox/outbox.ts';
import { forms, isFactKind } from '../../../../shared/submissions/kinds.ts';
import { sendAll } from '../outbox/send.ts';
import { buildSubmission } from './build.ts';
import { checkForm } from './check.ts';
import { encode, typedPath } from './encode.ts';
import { rowsOf, stringsOf, textOf, type Node, type Values } from './nodes.ts';
import type { FormSpec } from './spec.ts';
import { wordsOf } from './words.ts';

/** Longest wait on the form for the server's word; after it the entry's own screen follows what happens. */
const WAIT_ON_FORM_MS = 5_000;

/** A form's own words are on the device or a moment away; without them it writes in the language that is there. */
const WORDS_WAIT_MS = 3_000;

/** What a form writes by itself is read on the utility's papers, whoever typed it. */
function utilityReader(): Reader {
  const { locale, units } = utility.get() ?? preferences.get();
  return { locale, system: units };
}

/** Every problem of a draft, those of a correction's reason included. */
export function problemsOf(spec: FormSpec, draft: Draft, zone: string): readonly Problem[] {
  const reason =
    draft.corrects && draft.corrects.reason.trim() === '' ? [problem('reason-needed', 'reason')] : [];
  if (draft.corrects?.withdraw) return reason;
  const checked = checkForm(spec, draft.values, zone, utilityReader());
  return [...reason, ...(checked.ok ? [] : checked.problems)];
}

/** Problems from the server, at the fields where they were typed. */
export function serverProblems(
  spec: FormSpec,
  draft: Draft,
  zone: string,
  problems: readonly Problem[],
): Problem[] {
  const { rows } = encode(spec.nodes, draft.values, { zone, nullable: spec.nullable });
  return problems.map((found) => ({
    ...found,
    path: typedPath(found.path.replace(/^body\.(replacement\.)?/, ''), rows),
  }));
}

export type Sent =
  | { readonly state: 'kept' }
  /** The device would not keep it, and it was sent all the same: better told once than kept and not told. */
  | { readonly state: 'sent-unkept'; readonly recordedAt: string }
  | { readonly state: 'refused'; readonly problems: readonly Problem[] }
  /** Neither kept nor sent: only the open page has it. */
  | { readonly state: 'not-kept' };

/** Writes the checked form into the outbox and sends it. Waits a little for the answer. */
export async function queueForm(spec: FormSpec, draft: Draft, author: Session, zone: string): Promise<Sent> {
  // Only a form that writes sentences of its own needs their words, from the device where the app is kept there. Nothing
  // else waits: until it is in the outbox a phone that goes dark has no more than an unfinished form.
  if (spec.complete)
    await Promise.race([loadUtilityWords(), new Promise((resolve) => setTimeout(resolve, WORDS_WAIT_MS))]);
  const checked = draft.corrects?.withdraw ? null : checkForm(spec, draft.values, zone, utilityReader());
  const body = checked?.body ?? null;
  const now = new Date();
  const submission = buildSubmission(spec, draft, body, {
    personId: author.personId,
    deviceId: deviceId(),
    units: preferences.get().units,
    now,
  });
  const photos = exhibitLists.flatMap(
    (name) => (body?.[name] ?? []) as readonly { readonly sha256: string }[],
  );
  const entry: Entry = {
    submissionId: draft.submissionId,
    submission,
    author: { personId: author.personId, name: author.name },
    draft,
    state: 'waiting',
    problems: [],
    lastError: null,
    lastTriedAt: null,
    tries: 0,
    queuedAt: now.toISOString(),
    recordedAt: null,
    photos: [...new Set(photos.map(({ sha256 }) => sha256))].map((sha256) => ({ sha256, state: 'awaited' })),
  };
  // From the touch that sends: now there is something to lose.
  void askToKeep();
  try {
    await keepEntry(entry);
  } catch {
    return sendUnkept(entry);
  }
  rememberCodes(spec.kind, spec.nodes, draft.values);
  await Promise.race([sendAll(), new Promise((resolve) => setTimeout(resolve, WAIT_ON_FORM_MS))]);
  return { state: 'kept' };
}

/** What became of a small form that is sent where it stands. */
export type Delivered =
  | { readonly state: 'recorded' | 'waiting' | 'not-kept' }
  | { readonly state: 'refused'; readonly problems: readonly Problem[] };

/**
 * Queues a checked form that has no screen of its own and says what to tell beside it: the server has it, it waits in the
 * outbox, it was refused, or neither the device nor the server has it. The draft goes once something else holds it.
 */
export async function deliverInPlace(
  spec: FormSpec,
  draft: Draft,
  author: Session,
  zone: string,
): Promise<Delivered> {
  const sent = await queueForm(spec, draft, author, zone);
  if (sent.state === 'not-kept' || sent.state === 'refused') return sent;
  // Gone from the outbox: the server has confirmed it.
  const entry = sent.state === 'kept' ? await readEntry(draft.submissionId).catch(() => null) : null;
  if (entry?.state === 'refused') return { state: 'refused', problems: entry.problems };
  dropDraft(draft.submissionId);
  return { state: entry ? 'waiting' : 'recorded' };
}

async function sendUnkept({ submission }: Entry): Promise<Sent> {
  const answer = await postJson<{ readonly recordedAt: string }>('/api/submissions', submission);
  if (answer.outcome === 'ok') return { state: 'sent-unkept', recordedAt: answer.value.recordedAt };
  if (answer.outcome === 'refused') return { state: 'refused', problems: answer.problems };
  return { state: 'not-kept' };
}

/** Codes and people that were typed are offered next time. */
function rememberCodes(kind: string, nodes: readonly Node[], values: Values, base = ''): void {
  for (const node of nodes) {
    if (node.type === 'section' || node.type === 'when') {
      rememberCodes(kind, node.nodes, values, base);
      continue;
    }
    const path = base === '' ? node.name : `${base}.${node.name}`;
    const value = values[node.name];
    if (node.type === 'list') for (const row of rowsOf(value)) rememberCodes(kind, node.item, row, path);
    else if (node.type === 'person') recall('people', textOf(value));
    else if (node.type === 'people') for (const id of stringsOf(value)) recall('people', id);
    // Plates, policies, check and case numbers are other people's: they are not offered again.
    else if (node.type === 'text' && node.keypad === 'code' && !isOthers(kind))
      recall(wordsOf(kind, node, path), textOf(value));
  }
}

const isOthers = (kind: string): boolean =>
  kind === 'party' || (isFactKind(kind) && forms[kind].subjects.some((subject) => subject === 'claim'));
