import { readFileSync } from 'node:fs';
import { App, Stack } from 'aws-cdk-lib';
import { Bucket } from 'aws-cdk-lib/aws-s3';
import { describe, expect, it } from 'vitest';
import { explained } from '../../../infra/aws/rules/explained.ts';
import { judge } from '../../../infra/aws/rules/houseRules.ts';
import { example, synthesise } from './synthesised.ts';

const { judged } = synthesise();

describe('the rules for AWS', () => {
  it('find nothing that is not explained', () => {
    expect(
      judged.left.map(({ ruleName, violatingResources }) => [
        ruleName,
        violatingResources.map(({ constructPath }) => constructPath),
      ]),
    ).toEqual([]);
  });

  it.each(explained)('the explanation of $rule at $where is needed', (line) => {
    expect(judged.used.has(line)).toBe(true);
  });

  it.each(explained)('$rule at $where has a reason in a sentence', ({ because }) => {
    expect(because).toMatch(/^[A-Zd].{30,}\.$/);
  });

  it('are asked at all: a bucket left open is found', () => {
    const app = new App({ analyticsReporting: false });
    new Bucket(new Stack(app, 'Other'), 'Open');
    expect(judge(app).left.map(({ ruleName }) => ruleName)).toContain('AwsSolutions-S1');
  });

  it('are part of every synth', () => {
    const build = readFileSync(new URL('../../../infra/aws/build.ts', import.meta.url), 'utf8');
    expect(build).toContain('Validations.of(app).addPlugins(new HouseRules())');
  });

  it('hold with a name of its own as well, and then need one excuse less', () => {
    const settings = example();
    const own = synthesise({
      ...settings,
      utility: { ...settings.utility, publicUrl: 'https://hydrants.millrace.example/' },
      domain: {
        name: 'hydrants.millrace.example',
        certificateArn: 'arn:aws:acm:us-east-1:123456789012:certificate/00000000-0000-0000-0000-000000000000',
        hostedZone: { id: 'Z0000000000', name: 'millrace.example' },
      },
    });
    expect(own.judged.left).toEqual([]);
    const unused = explained.filter((line) => !own.judged.used.has(line));
    expect(unused.map(({ rule }) => rule.source)).toEqual(['AwsSolutions-CFR4']);
  });
});
