import { describe, expect, it } from 'vitest';
import { permissions, type FunctionName, type Permission } from '../../../infra/aws/permissions.ts';
import { tables } from '../../../shared/deployment/tables.ts';
import { resourcesOf, synthesise } from './synthesised.ts';

const { service } = synthesise();
const resources = resourcesOf(service);

interface Statement {
  readonly Effect: string;
  readonly Action: string | readonly string[];
  readonly Resource: unknown;
  readonly Condition?: unknown;
}

const list = <T>(value: T | readonly T[]): readonly T[] =>
  Array.isArray(value) ? (value as readonly T[]) : [value as T];

/** A resource as a short name: the data stack's export names or the service stack's ids say which it is. */
function shortName(resource: unknown): string {
  const text = JSON.stringify(resource);
  if (text.includes(':identity/claims@')) return 'sender';
  if (text.includes(':identity/hydrants@')) return 'dispatch';
  const found =
    /(SubmissionsTable|PersonalTable|ProjectionsTable|UniqueTable|OutboxTable|UnprojectedTable|EvidenceBucket|InventoryBucket|NetworkBucket|PublishedBucket|ProjectFailures|PublishFailures|DispatchFailures|DisplayFailures|DispatchMessagesTexts|PacketKey|Function\w+?Log(?=[0-9A-F]{8}")|FunctionpacketJobsHandler)/.exec(
      text,
    )?.[1];
  if (found === undefined) return text;
  const kind = text.includes('StreamArn') ? '/stream' : '';
  const suffix = /"(\/[^"]*\*)"/.exec(text)?.[1] ?? '';
  return `${found}${kind}${suffix}`;
}

/** Every right that the templates give to one function, as `action on resource`. */
function rightsOf(name: FunctionName): string[] {
  const role = Object.keys(resources).find(
    (id) => id.startsWith(`Function${name}Role`) && resources[id]!.Type === 'AWS::IAM::Role',
  )!;
  const statements = Object.values(resources)
    .filter(
      ({ Type, Properties }) =>
        Type === 'AWS::IAM::Policy' && JSON.stringify(Properties['Roles']).includes(`"${role}"`),
    )
    .flatMap(({ Properties }) => Properties['PolicyDocument'].Statement as Statement[]);
  return statements
    .flatMap(({ Effect, Action, Resource, Condition }) => {
      expect(Effect).toBe('Allow');
      return list(Action).flatMap((action) =>
        list(Resource).map(
          (resource) =>
            `${action} on ${shortName(resource)}${Condition ? ` if ${JSON.stringify(Condition)}` : ''}`,
        ),
      );
    })
    .sort();
}

const bucketId = {
  evidence: 'EvidenceBucket',
  inventory: 'InventoryBucket',
  network: 'NetworkBucket',
  published: 'PublishedBucket',
};
const expected = ({ actions, on }: Permission): string[] =>
  actions.map((action) => {
    if ('table' in on) {
      const only = { 'ForAllValues:StringEquals': { 'dynamodb:LeadingKeys': [on.partition] } };
      const limit = on.partition === undefined ? '' : ` if ${JSON.stringify(only)}`;
      return `${action} on ${tables[on.table].logicalId}${limit}`;
    }
    if ('key' in on) return `${action} on PacketKey`;
    if ('function' in on) return `${action} on FunctionpacketJobsHandler`;
    if ('identity' in on) return `${action} on ${on.identity}`;
    if ('topic' in on) return `${action} on DispatchMessagesTexts`;
    // A question about the account knows no resource.
    if ('account' in on) return `${action} on "*"`;
    if (action !== 's3:ListBucket') return `${action} on ${bucketId[on.bucket]}/${on.prefix}*`;
    const limit =
      on.prefix === '' ? '' : ` if ${JSON.stringify({ StringLike: { 's3:prefix': `${on.prefix}*` } })}`;
    return `${action} on ${bucketId[on.bucket]}${limit}`;
  });

const follows = (table: string, queue: string): string[] => [
  `dynamodb:DescribeStream on ${table}/stream`,
  `dynamodb:GetRecords on ${table}/stream`,
  `dynamodb:GetShardIterator on ${table}/stream`,
  // An action that knows no resource.
  'dynamodb:ListStreams on "*"',
  `sqs:GetQueueAttributes on ${queue}`,
  `sqs:GetQueueUrl on ${queue}`,
  `sqs:SendMessage on ${queue}`,
];
const besides: Partial<Record<FunctionName, string[]>> = {
  // What failed three times is laid aside, and not dropped.
  display: [
    'sqs:GetQueueAttributes on DisplayFailures',
    'sqs:GetQueueUrl on DisplayFailures',
    'sqs:SendMessage on DisplayFailures',
  ],
  project: follows('SubmissionsTable', 'ProjectFailures'),
  publish: follows('ProjectionsTable', 'PublishFailures'),
  dispatchSend: follows('ProjectionsTable', 'DispatchFailures'),
};

describe('what a function may do', () => {
  it.each(Object.keys(permissions) as FunctionName[])('%s: what the table says and nothing else', (name) => {
    const log = [`logs:CreateLogStream on Function${name}Log`, `logs:PutLogEvents on Function${name}Log`];
    expect(rightsOf(name)).toEqual(
      [...log, ...permissions[name].flatMap(expected), ...(besides[name] ?? [])].sort(),
    );
  });

  it.each(Object.keys(permissions) as FunctionName[])('%s: by that one list alone', (name) => {
    const role = Object.entries(resources).find(
      ([id, { Type }]) => id.startsWith(`Function${name}Role`) && Type === 'AWS::IAM::Role',
    )![1];
    expect(role.Properties).not.toHaveProperty('ManagedPolicyArns');
    expect(role.Properties).not.toHaveProperty('Policies');
  });
});

/** The rules in words, held against the table itself. */
describe('what no function may do', () => {
  const all = (Object.entries(permissions) as [FunctionName, readonly Permission[]][]).flatMap(
    ([name, own]) => own.flatMap(({ actions, on }) => actions.map((action) => ({ name, action, on }))),
  );
  const who = (test: (right: (typeof all)[number]) => boolean) =>
    [...new Set(all.filter(test).map(({ name }) => name))].sort();
  const writes = /Put|Update|Delete|Write|Create|Restore|Bypass/;

  it('no action is a wildcard', () => {
    expect(all.filter(({ action }) => action.includes('*'))).toEqual([]);
  });

  it('what names no resource only reads', () => {
    expect(all.flatMap(({ action, on }) => ('account' in on ? [action] : [])).sort()).toEqual([
      'ses:GetAccount',
      'sns:GetSMSSandboxAccountStatus',
    ]);
  });

  it('no policy of the whole stack, the CDK’s own helpers included, writes by a wildcard', () => {
    const rights = Object.values(resources)
      .filter(({ Type }) => Type === 'AWS::IAM::Policy' || Type === 'AWS::IAM::ManagedPolicy')
      .flatMap(({ Properties }) => Properties['PolicyDocument'].Statement as Statement[])
      .flatMap(({ Action, Resource }) =>
        list(Action).flatMap((action) => list(Resource).map((resource) => ({ action, resource }))),
      );
    expect(rights.length).toBeGreaterThan(100);
    expect(rights.filter(({ action }) => action.includes('*'))).toEqual([]);
    const onEverything = rights.flatMap(({ action, resource }) => (resource === '*' ? [action] : []));
    expect([...new Set(onEverything)].sort()).toEqual([
      'dynamodb:ListStreams',
      'ses:GetAccount',
      'sns:GetSMSSandboxAccountStatus',
    ]);
  });

  it('nobody changes or deletes a fact, or reads a whole table', () => {
    expect(
      who(
        ({ action, on }) =>
          'table' in on &&
          on.table === 'submissions' &&
          /Update|Delete|BatchWrite|Transact|PartiQL/.test(action),
      ),
    ).toEqual([]);
    // But for the one that looks a plate up among the erasable fields (decision 0163).
    expect(
      all.flatMap(({ name, action, on }) =>
        /Scan/.test(action) ? [[name, 'table' in on ? on.table : '']] : [],
      ),
    ).toEqual([['records', 'personal']]);
  });

  it('only the function that takes submissions writes personal rows, and only those who show them read them', () => {
    const personal = all.filter(({ on }) => 'table' in on && on.table === 'personal');
    const writers = personal.filter(({ action }) => /Put|Delete/.test(action)).map(({ name }) => name);
    // A letter that was sent names whom it went to.
    expect([...new Set(writers)].sort()).toEqual(['packets', 'submissions']);
    expect([...new Set(personal.map(({ name }) => name))].sort()).toEqual([
      'packetJobs',
      'packets',
      'records',
      'submissions',
    ]);
  });

  it('only those who take submissions or issue packets write facts or take numbers', () => {
    expect(
      who(({ action, on }) => 'table' in on && on.table === 'submissions' && writes.test(action)),
    ).toEqual(['packetJobs', 'packets', 'submissions']);
    const ofNumbers = (on: Permission['on']): boolean =>
      'table' in on && on.table === 'unique' && on.partition === undefined;
    expect(who(({ action, on }) => ofNumbers(on) && writes.test(action))).toEqual([
      'packetJobs',
      'packets',
      'submissions',
    ]);
  });

  it('who counts uploads reaches the counts of uploads and no number beside them', () => {
    // Written out: a slip in the name would open the claim numbers, or close the counts.
    expect(
      rightsOf('evidence').filter((right) => right.includes('UniqueTable') && right.includes(' if ')),
    ).toEqual(
      ['GetItem', 'PutItem'].map(
        (action) =>
          `dynamodb:${action} on UniqueTable if {"ForAllValues:StringEquals":{"dynamodb:LeadingKeys":["uploads-of-day"]}}`,
      ),
    );
  });

  it('only the projector writes projections; a packet that is being made says there how far it is', () => {
    expect(
      who(({ action, on }) => 'table' in on && on.table === 'projections' && writes.test(action)),
    ).toEqual(['packetJobs', 'packets', 'project']);
  });

  it('only the writers of letters and of messages to dispatch send, each from its own address; who else sees what goes out', () => {
    expect(who(({ action }) => /^(ses:Send|sns:Publish)/.test(action))).toEqual(['digest', 'dispatchSend']);
    const from = (one: string) =>
      who(({ action, on }) => action === 'ses:SendEmail' && 'identity' in on && on.identity === one);
    expect([from('sender'), from('dispatch')]).toEqual([['digest'], ['dispatchSend']]);
    expect(who(({ on }) => 'topic' in on)).toEqual(['dispatchSend']);
    const outbox = all.filter(({ on }) => 'table' in on && on.table === 'outbox');
    expect([...new Set(outbox.map(({ name }) => name))].sort()).toEqual([
      'calendar',
      'digest',
      'dispatch',
      'dispatchSend',
      'health',
      'outgoing',
    ]);
    const looks = outbox.filter(({ name }) => name === 'health' || name === 'outgoing');
    expect([...new Set(looks.map(({ action }) => action))]).toEqual(['dynamodb:Query']);
  });

  it('the function that takes submissions sees no evidence', () => {
    expect(permissions.submissions.filter(({ on }) => 'bucket' in on)).toEqual([]);
  });

  it('nobody deletes evidence or passes by its lock', () => {
    expect(
      who(
        ({ action, on }) =>
          'bucket' in on && on.bucket === 'evidence' && /Delete|Bypass|Retention|LegalHold|Acl/.test(action),
      ),
    ).toEqual([]);
  });

  it('only the publisher writes what is public, and only pages; it sees no person', () => {
    expect(
      who(({ action, on }) => 'bucket' in on && on.bucket === 'published' && writes.test(action)),
    ).toEqual(['publish']);
    for (const { on } of permissions.publish) {
      if ('bucket' in on && on.bucket === 'published') expect(on.prefix).toBe('pages/');
      if ('table' in on) expect(['projections', 'submissions', 'unprojected']).toContain(on.table);
    }
  });

  it('nobody writes an inventory: a manager imports one with their own rights', () => {
    expect(
      who(({ action, on }) => 'bucket' in on && on.bucket === 'inventory' && writes.test(action)),
    ).toEqual([]);
  });

  it('only the function that asks the network model reads it, and nobody writes it', () => {
    const model = all.filter(({ on }) => 'bucket' in on && on.bucket === 'network');
    expect([...new Set(model.map(({ name }) => name))]).toEqual(['network']);
    expect(model.filter(({ action }) => writes.test(action))).toEqual([]);
  });
});
