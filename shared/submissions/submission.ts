import * as z from 'zod';
import { problem, type Problem } from '../problems/problem.ts';
import { problemsFromZod } from '../problems/fromZod.ts';
import type { Role } from '../roles.ts';
import {
  currentSchemaVersion,
  envelopeShape,
  streamOf,
  subject,
  type Stream,
  type Subject,
  type SubjectType,
} from './envelope.ts';
import { correctionBody, type CorrectionBody } from './forms/correction.ts';
import { correctionKind, factKinds, forms, isFactKind, kinds, type FactKind, type Kind } from './kinds.ts';

export type BodyOf<K extends FactKind> = z.infer<(typeof forms)[K]['body']>;

export interface Envelope {
  readonly schemaVersion: typeof currentSchemaVersion;
  readonly submissionId: string;
  readonly subject: Subject;
  readonly occurredAt: string;
  readonly sentAt: string;
  readonly person: { readonly personId: string };
  readonly device: { readonly deviceId: string };
  readonly enteredUnits: 'us' | 'metric';
  readonly test?: true;
}

export type Fact<K extends FactKind = FactKind> = {
  [P in K]: Envelope & { readonly kind: P; readonly body: BodyOf<P> };
}[K];
export type Correction = Envelope & { readonly kind: typeof correctionKind; readonly body: CorrectionBody };
export type Submission = Fact | Correction;

export type Parsed<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: Problem[] };

const envelope = z.looseObject({
  ...envelopeShape,
  kind: z.string(),
  body: z.record(z.string(), z.unknown()),
});
const envelopeKeys = new Set([...Object.keys(envelopeShape), 'kind', 'body']);

/** The form that decides who may write this submission and about what: a correction's is its target's. */
export function formOf(submission: Submission): (typeof forms)[FactKind] {
  const kind = submission.kind === correctionKind ? submission.body.targetKind : submission.kind;
  if (!isFactKind(kind)) throw new Error(`no form for kind ${kind}`);
  return forms[kind];
}

export const writersOf = (submission: Submission): readonly Role[] => formOf(submission).writers;
export const readersOf = (kind: FactKind): readonly Role[] => forms[kind].readers;
export const streamOfSubmission = (submission: Submission): Stream => streamOf(submission.subject);

/**
 * Checks a submission from outside. Answers every problem at once, envelope and body together, with paths from the
 * top of what was sent (`body.found.jetHeightIn`). Reads every schema version ever released; today there is one.
 */
export function parseSubmission(input: unknown): Parsed<Submission> {
  if (typeof input !== 'object' || input === null || Array.isArray(input))
    return { ok: false, problems: [problem('not-a-submission')] };
  const raw = input as Record<string, unknown>;
  const version = raw['schemaVersion'];
  if (typeof version === 'number' && version > currentSchemaVersion)
    return {
      ok: false,
      problems: [problem('newer-schema', 'schemaVersion', { newest: currentSchemaVersion })],
    };

  const problems: Problem[] = [];
  for (const key of Object.keys(raw))
    if (!envelopeKeys.has(key)) problems.push(problem('unknown-field', key, { field: key }));
  const outer = envelope.safeParse(raw, { reportInput: true });
  if (!outer.success) problems.push(...problemsFromZod(outer.error.issues));

  const kind = raw['kind'];
  if (typeof kind === 'string' && !kinds.includes(kind as Kind))
    problems.push(problem('not-one-of', 'kind', { values: kinds.join(', ') }));
  const parsed = parseBody(kind, raw['body']);
  problems.push(...parsed.problems);

  const subjects = parsed.subjects;
  // By itself, because another field of the envelope being wrong must not hide this.
  const about = subject.safeParse(raw['subject']);
  const subjectType = about.success ? about.data.type : undefined;
  if (subjects && subjectType && !subjects.includes(subjectType))
    problems.push(problem('wrong-subject', 'subject.type', { allowed: subjects.join(', ') }));

  if (problems.length > 0 || !outer.success) return { ok: false, problems };
  return { ok: true, value: { ...outer.data, body: parsed.body } as unknown as Submission };
}

interface ParsedBody {
  readonly body: unknown;
  readonly problems: Problem[];
  readonly subjects?: readonly SubjectType[];
}

function parseBody(kind: unknown, body: unknown): ParsedBody {
  // A missing or ill-shaped body is already reported by the envelope.
  if (typeof body !== 'object' || body === null || Array.isArray(body)) return { body, problems: [] };
  if (kind === correctionKind) return parseCorrection(body);
  if (!isFactKind(kind)) return { body, problems: [] };
  const { body: schema, subjects } = forms[kind];
  const parsed = (schema as z.ZodType).safeParse(body, { reportInput: true });
  return parsed.success
    ? { body: parsed.data, problems: [], subjects }
    : { body, problems: problemsFromZod(parsed.error.issues, ['body']), subjects };
}

function parseCorrection(body: object): ParsedBody {
  const parsed = correctionBody.safeParse(body, { reportInput: true });
  if (!parsed.success) return { body, problems: problemsFromZod(parsed.error.issues, ['body']) };
  const { targetKind, replacement } = parsed.data;
  if (!isFactKind(targetKind))
    return { body, problems: [problem('not-one-of', 'body.targetKind', { values: factKinds.join(', ') })] };
  const { body: schema, subjects } = forms[targetKind];
  if (replacement === null) return { body: parsed.data, problems: [], subjects };
  const inner = (schema as z.ZodType).safeParse(replacement, { reportInput: true });
  return inner.success
    ? { body: { ...parsed.data, replacement: inner.data }, problems: [], subjects }
    : { body, problems: problemsFromZod(inner.error.issues, ['body', 'replacement']), subjects };
}
