import { describe, expect, it } from 'vitest';
import { tables } from '../../../shared/deployment/tables.ts';
import { example, resourcesOf, synthesise } from './synthesised.ts';

const { data } = synthesise();
const resources = resourcesOf(data);
const ofType = (type: string) => Object.entries(resources).filter(([, { Type }]) => Type === type);

/**
 * Written out and not read from the code: CloudFormation replaces what has another logical id or another key with an
 * empty one. A change here is a migration, never a correction of the test.
 */
const pinnedTables = {
  SubmissionsTable: ['stream', 'entry', 'KEYS_ONLY'],
  PersonalTable: ['stream', 'entry', null],
  ProjectionsTable: ['partition', 'key', 'KEYS_ONLY'],
  UniqueTable: ['space', 'name', null],
  OutboxTable: ['box', 'entry', null],
  UnprojectedTable: ['space', 'mark', null],
} as const;

describe('tables', () => {
  it.each(Object.entries(pinnedTables))(
    '%s keeps its id and its keys',
    (logicalId, [hash, range, stream]) => {
      const { Type, Properties } = resources[logicalId]!;
      expect(Type).toBe('AWS::DynamoDB::Table');
      expect(Properties['KeySchema']).toEqual([
        { AttributeName: hash, KeyType: 'HASH' },
        { AttributeName: range, KeyType: 'RANGE' },
      ]);
      expect(Properties['AttributeDefinitions']).toEqual([
        { AttributeName: hash, AttributeType: 'S' },
        { AttributeName: range, AttributeType: 'S' },
      ]);
      expect(Properties['StreamSpecification']?.StreamViewType ?? null).toBe(stream);
      expect(Properties).not.toHaveProperty('TableName');
    },
  );

  it('are those that the stores know, and no more', () => {
    expect(
      ofType('AWS::DynamoDB::Table')
        .map(([id]) => id)
        .sort(),
    ).toEqual(Object.keys(pinnedTables).sort());
    expect(
      Object.values(tables)
        .map(({ logicalId }) => logicalId)
        .sort(),
    ).toEqual(Object.keys(pinnedTables).sort());
  });

  it.each(ofType('AWS::DynamoDB::Table'))('%s cannot be lost', (_, table) => {
    expect(table).toMatchObject({
      DeletionPolicy: 'Retain',
      UpdateReplacePolicy: 'Retain',
      Properties: {
        BillingMode: 'PAY_PER_REQUEST',
        DeletionProtectionEnabled: true,
        PointInTimeRecoverySpecification: { PointInTimeRecoveryEnabled: true },
        SSESpecification: { SSEEnabled: true },
      },
    });
  });
});

describe('buckets', () => {
  it('keep their ids', () => {
    expect(
      ofType('AWS::S3::Bucket')
        .map(([id]) => id)
        .sort(),
    ).toEqual(['AccessLogBucket', 'EvidenceBucket', 'InventoryBucket', 'NetworkBucket']);
  });

  it.each(ofType('AWS::S3::Bucket'))('%s is private, versioned, encrypted and kept', (_, bucket) => {
    expect(bucket).toMatchObject({
      DeletionPolicy: 'Retain',
      UpdateReplacePolicy: 'Retain',
      Properties: {
        BucketEncryption: {
          ServerSideEncryptionConfiguration: [{ ServerSideEncryptionByDefault: { SSEAlgorithm: 'AES256' } }],
        },
        PublicAccessBlockConfiguration: {
          BlockPublicAcls: true,
          BlockPublicPolicy: true,
          IgnorePublicAcls: true,
          RestrictPublicBuckets: true,
        },
        VersioningConfiguration: { Status: 'Enabled' },
      },
    });
  });

  it.each(ofType('AWS::S3::BucketPolicy'))('%s denies what does not come over TLS', (_, { Properties }) => {
    expect(Properties['PolicyDocument'].Statement).toContainEqual(
      expect.objectContaining({
        Effect: 'Deny',
        Action: 's3:*',
        Principal: { AWS: '*' },
        Condition: { Bool: { 'aws:SecureTransport': 'false' } },
      }),
    );
    for (const { Effect, Principal } of Properties['PolicyDocument'].Statement)
      if (Effect === 'Allow') expect(Principal).not.toEqual({ AWS: '*' });
  });

  it('keeps the key that signs packets, which signs and does nothing else', () => {
    expect(resources['PacketKey']).toMatchObject({
      Type: 'AWS::KMS::Key',
      DeletionPolicy: 'Retain',
      Properties: { KeySpec: 'ECC_NIST_P256', KeyUsage: 'SIGN_VERIFY' },
    });
  });

  it.each(['EvidenceBucket', 'InventoryBucket', 'NetworkBucket'])(
    '%s: who asked it for what is kept for 400 days',
    (id) => {
      expect(resources[id]!.Properties['LoggingConfiguration']).toMatchObject({
        DestinationBucketName: { Ref: 'AccessLogBucket' },
      });
      expect(resources['AccessLogBucket']!.Properties['LifecycleConfiguration'].Rules).toEqual([
        expect.objectContaining({ ExpirationInDays: 400, Status: 'Enabled' }),
      ]);
    },
  );

  it('locks evidence for the days that the settings say', () => {
    expect(resources['EvidenceBucket']!.Properties).toMatchObject({
      ObjectLockEnabled: true,
      ObjectLockConfiguration: {
        ObjectLockEnabled: 'Enabled',
        Rule: { DefaultRetention: { Mode: 'GOVERNANCE', Days: example().evidence.lockedDays } },
      },
    });
  });

  // Amazon S3 user guide, "Enforce conditional writes on Amazon S3 buckets"; service authorization reference for the keys.
  it.each([
    [
      'a write over what is there',
      { Null: { 's3:if-none-match': 'true' }, Bool: { 's3:ObjectCreationOperation': 'true' } },
    ],
    [
      'a key of the sender’s own',
      { Null: { 's3:x-amz-server-side-encryption-customer-algorithm': 'false' } },
    ],
    [
      'another encryption than its own',
      {
        Null: { 's3:x-amz-server-side-encryption': 'false' },
        StringNotEquals: { 's3:x-amz-server-side-encryption': 'AES256' },
      },
    ],
  ])('evidence refuses %s, of everybody', (_, condition) => {
    const policies = ofType('AWS::S3::BucketPolicy').filter(
      ([, { Properties }]) => JSON.stringify(Properties['Bucket']) === '{"Ref":"EvidenceBucket"}',
    );
    expect(policies).toHaveLength(1);
    expect(policies[0]![1].Properties['PolicyDocument'].Statement).toContainEqual({
      Sid: expect.any(String),
      Effect: 'Deny',
      Principal: { AWS: '*' },
      Action: 's3:PutObject',
      Resource: { 'Fn::Join': ['', [{ 'Fn::GetAtt': ['EvidenceBucket', 'Arn'] }, '/*']] },
      Condition: condition,
    });
  });

  it('no other bucket is written once: pages and inventories are replaced', () => {
    for (const [, { Properties }] of ofType('AWS::S3::BucketPolicy'))
      expect(JSON.stringify(Properties).includes('s3:if-none-match')).toBe(
        JSON.stringify(Properties['Bucket']).includes('Evidence'),
      );
    expect(ofType('AWS::S3::BucketPolicy').length).toBeGreaterThan(1);
  });

  it('takes photos from the site, with the headers that the upload address signs', () => {
    expect(resources['EvidenceBucket']!.Properties['CorsConfiguration'].CorsRules).toEqual([
      {
        AllowedMethods: ['PUT', 'GET'],
        AllowedOrigins: ['https://*.cloudfront.net'],
        AllowedHeaders: ['content-type', 'if-none-match', 'x-amz-checksum-sha256'],
        ExposedHeaders: ['etag'],
        MaxAge: 3600,
      },
    ]);
  });

  it('takes them from the utility’s own address once it has one', () => {
    const settings = example();
    const own = synthesise({
      ...settings,
      utility: { ...settings.utility, publicUrl: 'https://hydrants.example/' },
    });
    const [rule] = resourcesOf(own.data)['EvidenceBucket']!.Properties['CorsConfiguration'].CorsRules;
    expect(rule.AllowedOrigins).toEqual(['https://hydrants.example']);
  });
});

describe('people', () => {
  it('are added by a manager and stay', () => {
    const [[, pool]] = ofType('AWS::Cognito::UserPool') as [[string, (typeof resources)[string]]];
    expect(pool).toMatchObject({
      DeletionPolicy: 'Retain',
      Properties: {
        AdminCreateUserConfig: { AllowAdminCreateUserOnly: true },
        DeletionProtection: 'ACTIVE',
      },
    });
  });

  it('sign in with a fingerprint or a password, and longer than a shift with neither', () => {
    const [[, pool]] = ofType('AWS::Cognito::UserPool') as [[string, (typeof resources)[string]]];
    expect(pool.Properties).toMatchObject({
      Policies: { SignInPolicy: { AllowedFirstAuthFactors: ['PASSWORD', 'WEB_AUTHN'] } },
      WebAuthnUserVerification: 'required',
      MfaConfiguration: 'OPTIONAL',
    });
  });

  it('need a second factor where the settings say so, which leaves no passkeys', () => {
    const strict = synthesise({ ...example(), signIn: { ...example().signIn, secondFactor: 'required' } });
    const [pool] = Object.values(resourcesOf(strict.data)).filter(
      ({ Type }) => Type === 'AWS::Cognito::UserPool',
    );
    expect(pool!.Properties).toMatchObject({ MfaConfiguration: 'ON', EnabledMfas: ['SOFTWARE_TOKEN_MFA'] });
    expect(pool!.Properties['Policies']).not.toHaveProperty('SignInPolicy');
    expect(strict.judged.left).toEqual([]);
  });

  it('begin with one manager, who stays when the setting goes', () => {
    const first = example().firstManager!;
    expect(ofType('AWS::Cognito::UserPoolUser').map(([, user]) => user)).toEqual([
      expect.objectContaining({
        DeletionPolicy: 'Retain',
        Properties: expect.objectContaining({ Username: first.email, DesiredDeliveryMediums: ['EMAIL'] }),
      }),
    ]);
    expect(ofType('AWS::Cognito::UserPoolUserToGroupAttachment').map(([, member]) => member)).toEqual([
      expect.objectContaining({
        DeletionPolicy: 'Retain',
        Properties: expect.objectContaining({ GroupName: 'manager', Username: first.email }),
      }),
    ]);
    const none = resourcesOf(synthesise({ ...example(), firstManager: null }).data);
    expect(Object.values(none).filter(({ Type }) => Type === 'AWS::Cognito::UserPoolUser')).toEqual([]);
  });

  it('belong to the groups that handlers know', () => {
    const groups = ofType('AWS::Cognito::UserPoolGroup').map(([, { Properties }]) => Properties['GroupName']);
    expect(groups.sort()).toEqual(['clerk', 'crew', 'manager']);
  });
});
