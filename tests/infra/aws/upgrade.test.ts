import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { resourcesOf, synthesise, type Resource } from './synthesised.ts';

/**
 * The data stack of earlier versions beside this one's, resource by resource: an upgrade may add to what holds data, and
 * may neither drop nor replace any of it. Templates are added when a version is released and never changed.
 */
const folder = join(import.meta.dirname, '../../fixtures/released/stacks');
const now = resourcesOf(synthesise().data);

/**
 * Properties whose change makes CloudFormation put a new, empty resource in the old one's place ("Update requires:
 * Replacement" on each type's page of the AWS CloudFormation Template Reference; from memory). Of a table's attributes
 * only those of its key count, and those are in its key schema.
 */
const replacing: Readonly<Record<string, readonly string[]>> = {
  'AWS::DynamoDB::Table': ['TableName', 'KeySchema', 'ImportSourceSpecification'],
  'AWS::S3::Bucket': ['BucketName', 'BucketNamePrefix'],
  'AWS::KMS::Key': ['KeySpec', 'KeyUsage', 'MultiRegion'],
  'AWS::Cognito::UserPool': ['UsernameAttributes', 'AliasAttributes', 'UsernameConfiguration'],
  'AWS::Cognito::UserPoolDomain': ['Domain', 'UserPoolId'],
  'AWS::Cognito::UserPoolGroup': ['GroupName', 'UserPoolId'],
  'AWS::Cognito::UserPoolUser': ['Username', 'UserPoolId', 'UserAttributes', 'DesiredDeliveryMediums'],
  'AWS::Cognito::UserPoolUserToGroupAttachment': ['GroupName', 'Username', 'UserPoolId'],
  'AWS::S3::BucketPolicy': ['Bucket'],
};
const holdsData = (type: string): boolean =>
  ['AWS::DynamoDB::Table', 'AWS::S3::Bucket', 'AWS::KMS::Key', 'AWS::Cognito::UserPool'].includes(type);

describe.each(readdirSync(folder))('from %s', (file) => {
  const before = (
    JSON.parse(readFileSync(join(folder, file), 'utf8')) as { Resources: Record<string, Resource> }
  ).Resources;

  it.each(Object.entries(before))('%s stays, and stays the same one', (logicalId, was) => {
    const is = now[logicalId];
    expect(is?.Type).toBe(was.Type);
    const names = replacing[was.Type];
    expect(names, `${was.Type} has no row in the table of what replaces it`).toBeDefined();
    for (const name of names ?? []) expect(is?.Properties[name], name).toEqual(was.Properties[name]);
  });

  it('everything that holds data is kept when the stack goes, and when it would be replaced', () => {
    const data = Object.entries(before).filter(([, { Type }]) => holdsData(Type));
    expect(data.length).toBeGreaterThan(8);
    for (const [logicalId] of data)
      expect(now[logicalId], logicalId).toMatchObject({
        DeletionPolicy: 'Retain',
        UpdateReplacePolicy: 'Retain',
      });
  });

  it('a lock on evidence, once on, is not taken off', () => {
    // S3 lets nobody turn it off; a template that tries fails in the middle of an upgrade.
    expect(before['EvidenceBucket']?.Properties['ObjectLockEnabled']).toBe(true);
    expect(now['EvidenceBucket']?.Properties['ObjectLockEnabled']).toBe(true);
  });

  it('what a pool asks of its people may be added to and never changed', () => {
    for (const [logicalId, { Type, Properties }] of Object.entries(before)) {
      if (Type !== 'AWS::Cognito::UserPool') continue;
      expect(now[logicalId]?.Properties['Schema']).toEqual(
        expect.arrayContaining(Properties['Schema'] as unknown[]),
      );
    }
  });
});
